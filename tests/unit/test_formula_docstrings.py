"""Every formula says in its docstring exactly what it computes; the program prints from there."""

import inspect
import pkgutil
import re
from importlib import import_module

import pytest

import firmpedal.formulas
from firmpedal.formulas.references import every_entry
from firmpedal.quantity import story_of
from firmpedal.units import dimension_of

NOT_FORMULAS = {
    "firmpedal.formulas.references": {"entry", "every_entry", "parse"},
    "firmpedal.formulas.temperature": {"interpolate"},
}
WORDS_OF_EQUATIONS = {"pi", "sin", "cos", "tan", "asin", "exp", "sqrt", "in"}


def _public_functions():
    for module in pkgutil.iter_modules(firmpedal.formulas.__path__, "firmpedal.formulas."):
        if module.name.rpartition(".")[2].startswith("_"):
            continue
        for name, function in inspect.getmembers(import_module(module.name), inspect.isroutine):
            if function.__module__ == module.name and not name.startswith("_"):
                yield module.name, name, function


PUBLIC = list(_public_functions())
FORMULAS = [function for module, name, function in PUBLIC if name not in NOT_FORMULAS.get(module, ())]
every_formula = pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.__name__)


def test_formulas_are_found_and_the_exceptions_exist():
    assert len(FORMULAS) > 30
    named = {(module, name) for module, name, _ in PUBLIC}
    assert {(module, name) for module, names in NOT_FORMULAS.items() for name in names} <= named


@every_formula
def test_docstring_declares_the_arguments_of_the_signature_in_order(formula):
    parameters = inspect.signature(formula).parameters.values()
    assert [argument.name for argument in story_of(formula).arguments] == [each.name for each in parameters]
    assert {each.annotation for each in parameters} == {"float"}


@every_formula
def test_every_bracket_is_an_si_unit_with_a_dimension(formula):
    story = story_of(formula)
    for unit in (*(argument.unit for argument in story.arguments), story.unit):
        dimension_of(unit)


@every_formula
def test_source_is_in_the_bibliography_with_a_place_in_it(formula):
    assert story_of(formula).source in every_entry()
    place = re.search(r"Source: \[[^\]]+\], (.+?)\.\s*$", formula.__doc__, re.DOTALL)
    assert place
    assert len(place[1].split()) >= 2


@every_formula
def test_docstring_says_where_the_formula_is_valid(formula):
    assert re.search(r"^\s+Valid: \S", formula.__doc__, re.MULTILINE)


@every_formula
def test_title_equation_and_result_stand_where_they_are_read(formula):
    lines = formula.__doc__.splitlines()
    assert lines[0].endswith((".", ")."))
    assert lines[1] == lines[3] == ""
    assert lines[2].isascii()
    symbol = lines[2].split(" = ")[0].strip()
    returned = re.search(r"Returns:\s+(.*?)\.\n\n", formula.__doc__, re.DOTALL)[1]
    assert re.search(rf" {re.escape(symbol)} \[[^\]]+\]$", returned)


@every_formula
def test_symbols_can_be_replaced_by_values(formula):
    symbols = [argument.symbol for argument in story_of(formula).arguments]
    assert len(set(symbols)) == len(symbols)
    assert not set(symbols) & WORDS_OF_EQUATIONS
    right_side = story_of(formula).equation.partition(" = ")[2]
    for symbol in symbols:
        assert re.fullmatch(r"[A-Za-z]\w*", symbol)
        assert re.search(rf"\b{symbol}\b", right_side), f"{symbol} is not in {right_side}"
