"""The records: frozen, slotted, keyword-only dataclasses of the standard library; codes and values, no sentences."""
