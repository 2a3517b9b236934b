"""Small sums over what was answered, as the templates of starting files write them."""

import ast
import math
import operator
import re
from collections.abc import Mapping
from typing import Any

from ...units import INCH

Worth = float | str
_Values = Mapping[str, Worth]

_UNITS = {"in": INCH, "mm": 0.001}
_LENGTH = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?(?:/\d+)?) (in|mm)\b")
_OPERATORS: Any = operator
_SUMS: Mapping[type, Any] = {
    ast.Add: _OPERATORS.add,
    ast.Sub: _OPERATORS.sub,
    ast.Mult: _OPERATORS.mul,
    ast.Div: _OPERATORS.truediv,
    ast.USub: _OPERATORS.neg,
    ast.Eq: _OPERATORS.eq,
    ast.NotEq: _OPERATORS.ne,
    ast.Lt: _OPERATORS.lt,
    ast.LtE: _OPERATORS.le,
    ast.Gt: _OPERATORS.gt,
    ast.GtE: _OPERATORS.ge,
}


def _lean(across: float, along: float) -> float:
    """Return the angle in degrees by which what is ``along`` long leans ``across``."""
    return math.degrees(math.asin(across / along))


def _up(value: float, step: float) -> float:
    return step * math.ceil(value / step - 1.0e-9)


_FUNCTIONS: Mapping[str, Any] = {"min": min, "max": max, "cos": math.cos, "lean": _lean, "up": _up}


def worth(text: str, values: _Values) -> object:
    """Return what a sum or comparison comes to; lengths such as ``6 in`` count in metres.

    KeyError for a name without a value, ValueError for what is no sum.
    """
    plain = _LENGTH.sub(lambda found: f"(({found[1]}) * {_UNITS[found[2]]!r})", text.strip())
    return _of(ast.parse(plain, mode="eval").body, values)


def number(text: str, values: _Values) -> float:
    """Return what a sum comes to, as a number."""
    found = worth(text, values)
    if isinstance(found, bool) or not isinstance(found, int | float):
        raise ValueError(f"{text!r} is no number")  # noqa: TRY004 - a fault of the template
    return float(found)


def _of(node: ast.expr, values: _Values) -> object:
    match node:
        case ast.Constant(value=int() | float() | str() as value):
            return value
        case ast.Name(id=name):
            return values[name]
        case ast.BinOp(left=left, op=op, right=right):
            return _SUMS[type(op)](_of(left, values), _of(right, values))
        case ast.UnaryOp(op=op, operand=operand):
            return _SUMS[type(op)](_of(operand, values))
        case ast.Compare(left=left, ops=[op], comparators=[right]):
            return _SUMS[type(op)](_of(left, values), _of(right, values))
        case ast.BoolOp(op=ast.And(), values=both):
            return all(_of(each, values) for each in both)
        case ast.BoolOp(op=ast.Or(), values=both):
            return any(_of(each, values) for each in both)
        case ast.IfExp(test=test, body=body, orelse=other):
            return _of(body if _of(test, values) else other, values)
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _FUNCTIONS[name](*(_of(each, values) for each in arguments))
        case _:
            raise ValueError(f"{ast.unparse(node)!r} is no sum")
