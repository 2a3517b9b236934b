"""The formulas of a calculation as plain text, by the names by which its steps call them.

Those of `calculation.typ` as they are typeset; a test holds the two to the same names and symbols.
"""

FORMULAS = {
    "weight": "W = g sum(m) = {g} m/s2 x {m} kg = {W} N",
    "centre": "z_c = sum(m z) / sum(m) = {mz} kg m / {m} kg = {z} m",
    "gust at the piece": "V = V_f sqrt(K_z K_zt) = {Vf} sqrt({K}) = {V} m/s",
    "gust pressure": "q = 1/2 rho V^2 = 1/2 x {rho} kg/m3 x ({V} m/s)^2 = {q} Pa",
    "code pressure": (
        "q_z = 0.613 K_z K_zt K_e V^2 = 0.613 x {Kz} x {Kzt} x {Ke} x ({V} m/s)^2 = {q} Pa"
    ),
    "peak pressure": (
        "q_p = (1 + 7 I_v) 1/2 rho (c_r c_o v_b)^2 = "
        "(1 + 7 x {Iv}) 1/2 x {rho} ({cr} x {co} x {V} m/s)^2 = {q} Pa"
    ),
    "least wind": "H = p_min A = {p} Pa x {A} m2 = {H} N",
    "force": "F = q K_d G C A, G = {G}",
    "sum of forces": "H = sum(F) = {H} N, sum(F z) = {M} N m",
    "overturning": "M_o = gamma_W (M_w + U a) = {w} ({Mw} + {U} x {a}) = {M} N m",
    "holding": (
        "M_r = gamma_D W (d cos alpha - z sin alpha) = "
        "{D} x {W} ({d} x {cos} - {z} x {sin}) = {M} N m"
    ),
    "pushing": "S = gamma_W H + gamma_D W sin alpha = {w} x {H} + {D} x {W} x {sin} = {S} N",
    "friction": (
        "R = mu (gamma_D W cos alpha - gamma_W U) = {mu} ({D} x {W} x {cos} - {w} x {U}) = {R} N"
    ),
    "bearing": "p = N / A' = {p} Pa, p_a = {pa} Pa",
    "ratio": "{demand} / {capacity} = {ratio}: {met}",
    "anchor": "T / T_a + S / S_a = {u}: {met}",
    "tipping gust": (
        "q_t = M_r / (M_o / q) = {hold} / {one} = {q} Pa, "
        "V_t = sqrt(2 q_t / rho) = sqrt(2 x {q} / {rho}) = {V} m/s"
    ),
    "forecast gust": "V_f = V_t / sqrt(K_z K_zt) = {V} / sqrt({K}) = {Vf} m/s",
    "act at": (
        "V_a = min(V_t,low, V_s,low, V_t / sqrt({r}), V_s / sqrt({r})) / sqrt(K_z K_zt) = "
        "min({Vtl}, {Vsl}, {Vt} / sqrt({r}), {Vs} / sqrt({r})) / sqrt({K}) = {V} m/s"
    ),
}
"""Slots are the values of a step."""
