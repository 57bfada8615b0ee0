"""The one pipeline: survey and sheets in, plan out."""

from bathwright.planning.pipeline import make_plan

__all__ = ["make_plan"]
