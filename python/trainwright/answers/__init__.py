"""Answers to the questions of the shop: each function takes what is known and gives a :class:`trainwright.sheet.Sheet`.

Nothing is computed here that a chapter computes; these functions choose, compare and put into words.
"""

from __future__ import annotations

from ..judge import Rule

RULE = Rule.stated_chances(go=0.95, no_go=0.05)
"""GO from a chance of 95 %, NO-GO to 5 %: the rule of the console command unless another is given."""

SPREADS = {"rectangular": "rectangular", "normal": "normal 3 sigma"}
"""How a size may be taken to lie in its tolerance: as it is typed, and the chapter's word for it."""


def rule_in_words(rule: Rule) -> str:
    """The rule, for a sentence.

    >>> rule_in_words(RULE)
    'GO from a chance of 95 %, NO-GO to 5 %'
    """
    return f"GO from a chance of {100 * rule.go:g} %, NO-GO to {100 * rule.no_go:g} %"
