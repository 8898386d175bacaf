"""Kinds of columns that the two databases name differently, and sums that they write so."""

from typing import Any, Final

from sqlalchemy import BigInteger, Integer
from sqlalchemy.ext.compiler import compiles
from sqlalchemy.sql.functions import FunctionElement
from sqlalchemy.types import Float

SEAL: Final = Integer().with_variant(BigInteger(), "postgresql")
"""A CRC-32, which has one bit more than PostgreSQL's integer."""


class days_between(FunctionElement[float]):  # noqa: N801 - a function of SQL
    """Days from the second moment to the first, with their part."""

    type = Float()
    inherit_cache = True
    name = "days_between"


@compiles(days_between, "sqlite")
def _by_julian_day(element: Any, compiler: Any, **rest: Any) -> str:
    later, earlier = (compiler.process(one, **rest) for one in element.clauses)
    return f"(julianday({later}) - julianday({earlier}))"


@compiles(days_between, "postgresql")
def _by_epoch(element: Any, compiler: Any, **rest: Any) -> str:
    later, earlier = (compiler.process(one, **rest) for one in element.clauses)
    return f"(extract(epoch from {later} - {earlier}) / 86400.0)::float8"
