"""How many are left: from the catch of each pass to what to do next."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.how_many_left.core import core
from calc.method.how_many_left.inputs import Inputs
from calc.method.how_many_left.results import RESULTS

how_many_left = Calculator(
    name="how_many_left",
    title="How many are left",
    part="method",
    purpose="From the catch of each pass: how many adults were there, how many are still inside, "
    "and whether to make another pass.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "carle_strub_1978",
        "bohlin_1989",
        "removal_posterior",
        "removal_shy",
        "seber_2002",
        "schnute_1983",
        "gould_pollock_1997",
        "leslie_davis_1939",
        "robson_regier_1968",
        "burnham_1987",
        "zippin_1956",
    ),
    formula=(
        (
            r"\frac{n+1}{n-T+1}\prod_{i=1}^{k}\frac{kn-X-T+1+k-i}{kn-X+2+k-i}<1,"
            r"\qquad X=\sum_{i=1}^{k}(k-i)\,c_i",
            "Carle & Strub: the number at the start is the smallest whole n, from the catch T up, "
            "for which this holds",
            "carle_strub_1978",
        ),
        (
            r"p=\frac{T}{kN-X}",
            "Carle & Strub: share caught on one pass",
            "carle_strub_1978",
        ),
        (
            r"\frac{q}{p}-\frac{k\,q^k}{1-q^k}=\frac{\sum (i-1)\,c_i}{T},\qquad N=\frac{T}{1-q^k}",
            "Zippin, binomial-total form, solved for q = 1 - p",
            "bohlin_1989",
        ),
        (
            r"\Pr(N)\propto\frac{1}{N}\,\frac{N!}{(N-T)!}\,"
            r"\frac{\Gamma(kN-X-T+1)}{\Gamma(kN-X+2)}",
            "interval of the default, and the chance that none is left, Pr(N = T)",
            "removal_posterior",
        ),
        (
            r"\Pr(R\le m)=\sum_{r=0}^{m}\binom{C+r}{r}\,(1-Q)^{C+1}\,Q^{r},\qquad "
            r"Q=\left(1-\tfrac{p}{2}\right)^{z}",
            "number R left, judged from the last z passes alone, which caught C, for wasps half as "
            "easy to catch",
            "removal_shy",
        ),
        (
            r"\theta_i=e^{-KE_i}\left(1-e^{-Kf_i}\right),\qquad "
            r"\max_K\sum c_i\ln\frac{\theta_i}{\sum\theta},\qquad N=\frac{T}{1-e^{-KF}}",
            "passes of unequal minutes f: E is the time before a pass, F all of it",
            "gould_pollock_1997",
        ),
        (
            r"\frac{c_i}{f_i}=qN-qK_i",
            "Leslie's line: catch per minute against the catch K before the pass",
            "leslie_davis_1939",
        ),
        (
            r"\chi^2=\sum\frac{(c_i-e_i)^2}{e_i}",
            "test of fit against the expected catches e",
            "zippin_1956",
        ),
    ),
    assumptions=(
        "The nest is closed while you catch. Foragers coming home and new wasps make the estimate "
        "too high, or stop the fall.",
        "Every wasp is as easy to catch as any other. Guards come first and the rest hide, so the "
        "estimate is too low.",
        "Every pass is equally long and done alike, or its minutes are entered. Shorter or gentler "
        "later passes make the estimate too low.",
        "The last wasps are not less than half as easy to catch as the rest. If they are, more "
        "passes are needed than shown.",
    ),
)
