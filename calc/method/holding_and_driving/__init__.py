"""Holding and driving home: breath, heat, mesh and minutes of a box with live animals."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.holding_and_driving.core import core
from calc.method.holding_and_driving.inputs import Inputs
from calc.method.holding_and_driving.results import RESULTS

holding_and_driving = Calculator(
    name="holding_and_driving",
    title="Holding and driving",
    part="method",
    purpose="Whether a box keeps so many animals alive for so long: their heat, their breath, the "
    "mesh it needs, sugar and water, and what a parked car does.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "kaefer_2012",
        "kaefer_thesis",
        "kaefer_abstract_misfit",
        "wasps_agitated_2012",
        "gibo_1974",
        "gibo_1977",
        "agitation_levels_ours",
        "energy_per_oxygen",
        "seeley_1974",
        "holding_limits_ours",
        "package_bees",
        "crc_diffusion",
        "still_layer_ours",
        "stack_flow_equation",
        "woods_2005",
        "sucrose_energy",
        "null_parked_cars",
        "mclaren_2005",
        "grundstein_2010",
        "kovac_stabentheiner_2012",
    ),
    formula=(
        (
            r"P = m\,r\,\frac{21.1}{3.6}",
            "Heat in mW of m grams that breathe r mL/g/h.",
            "energy_per_oxygen",
        ),
        (
            r"V\,\frac{dC}{dt} = R - G\,(C - C_0)",
            "Carbon dioxide in a mixed box with breath R and air exchange G.",
            "own_reasoning",
        ),
        (
            r"Q = C_d A \sqrt{2 g h\,\frac{T_i - T_o}{T_i}}",
            "Air that warmth drives through a low and a high opening; h to the middle between.",
            "stack_flow_equation",
        ),
        (
            r"G = \frac{D A}{L}",
            "Air exchange to which diffusion through a mesh amounts.",
            "callister_5_7",
        ),
        (
            r"P(T_i) = (U A + \rho c_p Q)\,(T_i - T_o)",
            "Where the box settles: heat made equals heat lost; warmer animals make more.",
            "own_reasoning",
        ),
    ),
    assumptions=(
        "Breath was measured on resting Vespula workers; for hornets it is likely high. Moods "
        "above rest are our design levels: nobody has measured a catch box.",
        "No wind and no shaking; wind through the load space helps, bodies on the mesh hinder.",
        "Air is mixed, the box stands upright, bodies do not cover the mesh.",
        "Only air and animals warm up, not the walls, so a real box takes somewhat longer.",
        "A parked car follows averages of clear days; a second study found a slower rise in the "
        "first half hour.",
    ),
)
