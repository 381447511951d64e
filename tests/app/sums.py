"""Sums as pages and `solve --working` print them."""

import ast
import math
import operator

OPERATORS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul,
             ast.Div: operator.truediv, ast.USub: operator.neg}


def worked_out(text):
    """A sum of numbers and pi."""
    def value(node):
        if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)):
            return node.value
        if isinstance(node, ast.Name) and node.id == "pi":
            return math.pi
        if isinstance(node, ast.BinOp):
            return OPERATORS[type(node.op)](value(node.left), value(node.right))
        if isinstance(node, ast.UnaryOp):
            return OPERATORS[type(node.op)](value(node.operand))
        raise AssertionError(f"no sum: {text}")
    return value(ast.parse(text, mode="eval").body)
