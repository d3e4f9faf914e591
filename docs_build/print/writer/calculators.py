"""Calculators as tables to fill in by hand; exercises, with their answers at the back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from docutils import nodes

from calc import units
from calc.declare import WORDS
from calc.sources import source
from docs_build.page.answer import WITHHELD
from docs_build.print.writer import markup
from docs_build.print.writer.base import Answer, Note
from docs_build.print.writer.blocks import SHORT, is_short
from docs_build.print.writer.components import Components
from docs_build.print.writer.tables import FEW

LONG = 60
"""Letters from which a result takes the room of the unit, too."""


def both(cell: Mapping[str, Any]) -> str:
    """Return a value in both systems of units, once where they agree."""
    text, other = str(cell.get("text", "")), str(cell.get("customary_text", ""))
    return text if not other or other == text else f"{text} ({other})"


def unit_words(declared: Mapping[str, Any]) -> str:
    """Return the units in which a value is told."""
    shown = [units.label(declared.get(key, "")) for key in ("unit", "customary")]
    return " or ".join(dict.fromkeys(filter(None, shown)))


class Calculators(Components):
    """Renders calculators and exercises."""

    def do_calculator(self, node: nodes.Element) -> str:
        """Write a calculator: cautions, what goes in, what comes out, with room to write."""
        described, result = node["description"], node["result"]
        parts = [
            *map(self._caution, result["cautions"]),
            self._inputs(described, result),
            self._results(described, result),
            *self._result_tables(result),
            *map(self._chart, result["charts"]),
            self._sources(result),
        ]
        name = str(node["case"]).replace("_", " ")
        worked = f"Worked with the case “{name}”" if name else "Worked example"
        return markup.block(
            "calculator",
            markup.text(described["title"]),
            markup.text(described["purpose"]),
            markup.text(f"{worked}. The last column is yours."),
            "".join(parts).strip("\n"),
        )

    def _caution(self, caution: Mapping[str, Any]) -> str:
        body = markup.call("strong", markup.text(caution["text"]))
        body += markup.text(f" {caution['reason']}")
        level, short = caution["level"], len(caution["text"] + caution["reason"]) < SHORT
        return markup.block("notice", "", body, kind=level, word=WORDS[level], whole=short)

    def _inputs(self, described: Mapping[str, Any], result: Mapping[str, Any]) -> str:
        rows = "".join(
            self._input(each, result["inputs"].get(each["name"])) for each in described["inputs"]
        )
        return f"\n\n#fill-in([What goes in], [In], {rows});\n\n"

    def _input(self, declared: Mapping[str, Any], given: Mapping[str, Any] | None) -> str:
        label = markup.text(declared["label"])
        unused = given is None or given.get("value") is None
        shown = markup.text("not given" if unused else both(given or {}))
        if not declared.get("options"):
            return f"[{label}], [{markup.text(unit_words(declared))}], [{shown}], [], "
        names = "; ".join(option["label"] for option in declared["options"])
        label += markup.call("small-note", markup.text(f"One of: {names}."))
        # A choice has no unit: its options take the room.
        return f"table.cell(colspan: 2)[{label}], [{shown}], [], "

    def _results(self, described: Mapping[str, Any], result: Mapping[str, Any]) -> str:
        hidden = {
            name for each in result["cautions"] if each["level"] == "stop" for name in each["hides"]
        }
        declared = [each for each in described["results"] if each["kind"] != "table"]
        declared.sort(key=lambda each: not each["main"])
        rows = ""
        for each in declared:
            told = both(result["results"][each["name"]])
            if told.startswith("BEGIN:VCALENDAR"):
                told = "a file for your calendar, made on the page"
            shown = WITHHELD if each["name"] in hidden else told
            rows += self._result(each, shown)
        return f"\n\n#fill-in([What comes out], [Out], {rows});\n\n" if rows else ""

    def _result(self, declared: Mapping[str, Any], shown: str) -> str:
        mark = "strong" if declared["main"] else "plain"
        label = f"[#{mark}[{markup.text(declared['label'])}];], "
        if "\n" in shown:  # a letter keeps its lines
            value = f"[{'#linebreak();'.join(map(markup.text, shown.splitlines()))}], "
        else:
            value = f"[#{mark}[{markup.text(shown)}];], "
        if len(shown) > LONG:  # a sentence, which has no unit
            return f"{label}table.cell(colspan: 2){value}[], "
        return f"{label}[{markup.text(unit_words(declared))}], {value}[], "

    def _result_tables(self, result: Mapping[str, Any]) -> list[str]:
        return [
            self._result_table(told)
            for told in result["results"].values()
            if told["kind"] == "table" and told.get("rows")
        ]

    def _result_table(self, told: Mapping[str, Any]) -> str:
        heads = "".join(f"[{markup.text(column['label'])}], " for column in told["columns"])
        cells = "".join(f"[{markup.text(both(cell))}], " for row in told["rows"] for cell in row)
        sizes = "1fr, " * len(told["columns"])
        whole = markup.value(len(told["rows"]) <= FEW)
        title = markup.block("minor", markup.text(told["label"]))
        return (
            f"{title}#table-block(size: 8.6pt, whole: {whole}, columns: ({sizes}), "
            f"table.header(repeat: true, {heads}), {cells});\n\n"
        )

    def _chart(self, chart: dict[str, Any]) -> str:
        file = self.shared.figures.chart(chart)
        shown = f"#picture({markup.string(file)}, {markup.string(chart['alt'])}, width: auto);"
        return f"\n\n#picture-figure(none, [{markup.text(chart['title'])}])[{shown}];\n\n"

    def _sources(self, result: Mapping[str, Any]) -> str:
        told = "; ".join(source(each["key"]).cited() for each in result["sources"])
        return markup.block("small-note", markup.text(f"Sources: {told}.")) if told else ""

    # -- exercises

    def do_exercise(self, node: nodes.Element) -> str:
        """Write an exercise, with lines to write on and the way to its answer."""
        ident, number = node["ident"], int(node["number"])
        self.shared.exercises[ident] = number
        link = ""
        if self.shared.trainer:
            link = self.to(f"answer:{ident}", markup.text("Answer"), True, node)
        body, whole = self.inside(node), is_short(node)
        key = f"exercise:{ident}"
        return markup.block("exercise", link, body, number=number, key=key, whole=whole)

    def do_answer(self, node: nodes.Element) -> str:
        """Keep the answer for the back; links to it follow it there."""
        ident = node["ident"]
        for each in node["ids"]:
            self.shared.aliases[f"{self.docname}#{each}"] = f"answer:{ident}"
        node["ids"] = []
        made = Answer(ident, int(node["number"]), self.inside(node), self.docname)
        self.shared.answers.append(made)
        return ""

    def do_trainer_note(self, node: nodes.Element) -> str:
        """Keep the note for the back: here it would move the pages of one copy."""
        self.shared.notes.append(Note(self.docname, self.inside(node)))
        return ""
