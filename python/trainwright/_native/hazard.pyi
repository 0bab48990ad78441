"""
What can hurt someone in the work that a result belongs to, with a caution to print.
"""

__all__ = ["caution", "titles"]

def caution(title: str) -> str:
    """
    One sentence to print beside a result.

    >>> caution("compressed air")
    'Shop air throws pistons, springs and fluid: regulate it down, cover the part, and wear goggles.'
    """

def titles() -> list[str]:
    """
    Short names of every hazard.
    """
