"""What a table of the plan file and its keys are: what stands under every part of the schema."""

from typing import Any, NamedTuple

REQUIRED = "required"
"""Marks a key that may not be left out, in place of what counts then."""

Length = object
"""A length as written: text or number."""


class Key(NamedTuple):
    """One key: what it means, its value as it may be written, what counts where it is left out, most items of a list."""

    meaning: str
    example: str
    default: str
    most: int | None = None


def write_key(meaning: str, example: str, default: str, most: int | None = None) -> Any:
    """A key's place in its table. Typed Any: once a table is read, the key's value stands there."""
    return Key(meaning, example, default, most)


class Table:
    """A table of the plan file: known keys only, nothing converted; None where a key is left out. Never changed."""

    __slots__ = ("__dict__", "__pydantic_extra__", "__pydantic_fields_set__", "__pydantic_private__")

    def __setattr__(self, name: str, value: object) -> None:
        """Refuse: AttributeError."""
        raise AttributeError(f"a plan's {type(self).__name__} stays as it was read: {name} cannot be set")
