"""Dated numbers of the trade, each with its source and mark, and the invented sheets that come with the tool."""

from bathwright.knowledge.book import Knowledge, load

__all__ = ["Knowledge", "load"]
