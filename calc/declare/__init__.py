"""The one declaration of a calculator: inputs, results, cautions, sources.

A :class:`Calculator` joins a declaration with a *core*, a pure function of plain numbers in the
declared units. Everything that shows or calls a calculator reads this declaration: the native
caller, ``python -m calc``, the form in the page, the table in the PDF, the reference page, the
tests. Parsing and checking happen here and nowhere else.
"""

from calc.declare.answers import Answer, Result
from calc.declare.calculator import Calculator
from calc.declare.cautions import LEVELS, WORDS, Caution, Soft
from calc.declare.charts import Axis, Chart, Series
from calc.declare.fields import Given, choice, count, counts, day, number, numbers, shared, time
from calc.declare.incomplete import Incomplete
from calc.declare.inputs import ORIGINS, Choice, Input, Option
from calc.declare.moments import Day, Time
from calc.declare.numbers import Count, Counts, Number, Numbers
from calc.declare.reading import Reading
from calc.declare.results import Out

__all__ = [
    "LEVELS",
    "ORIGINS",
    "WORDS",
    "Answer",
    "Axis",
    "Calculator",
    "Caution",
    "Chart",
    "Choice",
    "Count",
    "Counts",
    "Day",
    "Given",
    "Incomplete",
    "Input",
    "Number",
    "Numbers",
    "Option",
    "Out",
    "Reading",
    "Result",
    "Series",
    "Soft",
    "Time",
    "choice",
    "count",
    "counts",
    "day",
    "number",
    "numbers",
    "shared",
    "time",
]
