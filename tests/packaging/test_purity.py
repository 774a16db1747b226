"""The calculations keep nothing and touch nothing; the service does no arithmetic of its own.

What the calculations may import is held by the import rules in pyproject.toml; these tests hold
what can be written without an import. Each rule is shown code that breaks it and code that does
not, so that a rule which finds nothing is known to be looking.
"""

import ast
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
Found = ast.expr | ast.stmt
Rule = Callable[[ast.Module], Iterator[Found]]

TOUCHES_THE_WORLD = {"open", "print", "input", "exec", "eval", "__import__"}
MUTABLE_DISPLAYS = (ast.List, ast.Dict, ast.Set, ast.ListComp, ast.DictComp, ast.SetComp)
MUTABLE_MAKERS = {"list", "dict", "set", "bytearray", "defaultdict", "deque", "Counter"}
READ_ONLY = {"Final", "MappingProxyType"}
ARITHMETIC = (ast.Sub, ast.Mult, ast.Div, ast.FloorDiv, ast.Mod, ast.Pow, ast.MatMult)
ARITHMETIC_CALLS = {"abs", "divmod", "pow", "round", "sum"}


def called(node: ast.AST | None) -> str:
    """Give the last word of the name that a node calls, or nothing."""
    if not isinstance(node, ast.Call):
        return ""
    name = node.func
    return name.id if isinstance(name, ast.Name) else getattr(name, "attr", "")


def calls_of(names: set[str], module: ast.Module) -> Iterator[Found]:
    """Give every call of a builtin, by its plain name."""
    for node in ast.walk(module):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in names:
            yield node


def touches_the_world(module: ast.Module) -> Iterator[Found]:
    """Give the calls that read, write or run something outside the arguments."""
    return calls_of(TOUCHES_THE_WORLD, module)


def rebinds_outer_names(module: ast.Module) -> Iterator[Found]:
    """Give the statements that let a function change what the next call sees."""
    return (node for node in ast.walk(module) if isinstance(node, ast.Global | ast.Nonlocal))


def outside_functions(body: list[ast.stmt]) -> Iterator[ast.stmt]:
    """Give every statement that runs on import, in classes and branches too."""
    for statement in body:
        yield statement
        if not isinstance(statement, ast.FunctionDef | ast.AsyncFunctionDef):
            for inner in ("body", "orelse", "finalbody"):
                yield from outside_functions(getattr(statement, inner, []))


def shared_mutables(module: ast.Module) -> Iterator[Found]:
    """Give the lists, dicts and sets made on import and bound to a name as they are."""
    for statement in outside_functions(module.body):
        value = getattr(statement, "value", None)
        if isinstance(statement, ast.Assign) and ast.unparse(statement.targets[0]) == "__all__":
            continue
        if isinstance(statement, ast.AnnAssign):
            words = {getattr(n, "id", "") for n in ast.walk(statement.annotation)}
            if words & READ_ONLY:
                continue
        elif not isinstance(statement, ast.Assign):
            continue
        if isinstance(value, MUTABLE_DISPLAYS) or called(value) in MUTABLE_MAKERS:
            yield statement


def written_out(node: ast.AST) -> bool:
    """Say whether only numbers meet here, none of them with a name, as in 64 * 1024."""
    return all(isinstance(part, ast.BinOp | ast.Constant | ast.operator) for part in ast.walk(node))


def arithmetic(module: ast.Module) -> Iterator[Found]:
    """Give the operators and calls that make one number of others."""
    for node in ast.walk(module):
        if not isinstance(node, ast.AugAssign | ast.BinOp) or written_out(node):
            continue
        if isinstance(node.op, ARITHMETIC):
            yield node
    yield from calls_of(ARITHMETIC_CALLS, module)


def places(rule: Rule, folder: str) -> list[str]:
    """Give every place in a folder that breaks a rule, as file:line."""
    files = sorted((ROOT / folder).rglob("*.py"))
    assert files, f"no code in {folder}"
    return [
        f"{file.relative_to(ROOT).as_posix()}:{node.lineno}: {ast.unparse(node)[:80]}"
        for file in files
        for node in rule(ast.parse(file.read_text(encoding="utf-8")))
    ]


@pytest.mark.parametrize("rule", [touches_the_world, rebinds_outer_names, shared_mutables])
def test_the_calculations_keep_nothing_and_touch_nothing(rule: Rule) -> None:
    assert places(rule, "roofing_core") == []


def test_the_service_does_no_arithmetic() -> None:
    assert places(arithmetic, "api/roofing_api") == []


@pytest.mark.parametrize(
    ("rule", "code"),
    [
        (touches_the_world, "def f(): return open('prices')"),
        (touches_the_world, "print(1)"),
        (rebinds_outer_names, "def f():\n    global unit\n    unit = 'mm'"),
        (rebinds_outer_names, "def f():\n    def g():\n        nonlocal n\n    n = 1"),
        (shared_mutables, "SIZES = [12, 16]"),
        (shared_mutables, "SIZES: dict[str, int] = {}"),
        (shared_mutables, "class Metal:\n    sold = set()"),
        (shared_mutables, "if True:\n    SIZES = {s: 1 for s in 'ab'}"),
        (arithmetic, "area = width * length"),
        (arithmetic, "area /= 144"),
        (arithmetic, "text = '%s ft' % feet"),
        (arithmetic, "def f(feet): return round(feet)"),
    ],
)
def test_each_rule_finds_what_breaks_it(rule: Rule, code: str) -> None:
    assert len(list(rule(ast.parse(code)))) == 1


@pytest.mark.parametrize(
    ("rule", "code"),
    [
        (touches_the_world, "seam.open()"),
        (shared_mutables, "SIZES = MappingProxyType({'a': 1})"),
        (shared_mutables, "SIZES: Final = {'a': 1}"),
        (shared_mutables, "__all__ = ['area']"),
        (shared_mutables, "def f():\n    rows = []\n    return tuple(rows)"),
        (arithmetic, "LIMIT = 8 * 1024 * 1024"),
        (arithmetic, "answer: int | None = first + second"),
        (arithmetic, "reply(*parts, **fields)"),
    ],
)
def test_each_rule_lets_the_rest_pass(rule: Rule, code: str) -> None:
    assert list(rule(ast.parse(code))) == []
