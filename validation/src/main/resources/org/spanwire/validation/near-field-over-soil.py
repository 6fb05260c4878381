"""Near field of a level wire over soil, independently of the engine.

A half wave of sinusoidal current, 1 A rms at its middle, along x at a height h; the wire is a row of
Hertz dipoles. Each dipole's direct field is the closed form. What the soil reflects is found from the
spectra of E_z and H_z alone: they come back with the Fresnel coefficients of TM and TE waves,
R_v = (eps u0 - u1)/(eps u0 + u1) and R_h = (u0 - u1)/(u0 + u1), u = sqrt(lambda^2 - k^2), and the other
components follow from them by E_t = (grad_t d/dz E_z + j omega mu z x grad_t H_z)/lambda^2 and
H_t = (grad_t d/dz H_z - j omega eps z x grad_t E_z)/lambda^2 (Felsen and Marcuvitz, Radiation and
Scattering of Waves, 1973, section 2.2). No potentials, no tables. Integrals over lambda by Gauss rules on
a path above the singularities, exp(+j omega t), with twice as many nodes for a check.

Run: python3 near-field-over-soil.py      (numpy, scipy)
"""
import numpy as np
from scipy.special import jv

C = 299792458.0
MU = 1.25663706212e-6
EPS = 1 / (MU * C * C)
ETA = MU * C


def path(k, zeta, panels, nodes):
    """Points and weights of the path lambda = s + j b(s) from 0 to where exp(-u zeta) has died."""
    end = max(6 * k, 42 / zeta)
    edges = np.concatenate([np.linspace(0, 3 * k, panels + 1), np.geomspace(3 * k, end, 3 * panels + 1)[1:]])
    t, w = np.polynomial.legendre.leggauss(nodes)
    a, b = edges[:-1, None], edges[1:, None]
    s = (0.5 * (a + b) + 0.5 * (b - a) * t).ravel()
    ws = (0.5 * (b - a) * w).ravel()
    height = 0.3 * k
    lam = s + 1j * height * np.sin(np.pi * np.clip(s / (3 * k), 0, 1))
    slope = np.where(s < 3 * k, 1 + 1j * height * np.pi / (3 * k) * np.cos(np.pi * s / (3 * k)), 1)
    return lam, ws * slope


def root(z):
    r = np.sqrt(z)
    return np.where(r.real < 0, -r, r)


def reflected(k, omega, eps, dx, dy, zeta, lam, w):
    """E and H of a unit dipole moment along x."""
    rho = np.hypot(dx, dy)
    cos, sin = dx / rho, dy / rho
    u0 = root(lam**2 - k**2)
    u1 = root(lam**2 - eps * k**2)
    rv = (eps * u0 - u1) / (eps * u0 + u1)
    rh = (u0 - u1) / (u0 + u1)
    decay = np.exp(-u0 * zeta) * w
    j0, j1 = jv(0, lam * rho), jv(1, lam * rho)
    first = -lam * j1                      # d/d rho of J0(lambda rho)
    second = -lam**2 * (j0 - j1 / (lam * rho))
    xx = cos**2 * second + sin**2 * first / rho
    yy = sin**2 * second + cos**2 * first / rho
    xy = sin * cos * (second - first / rho)
    c = 1 / (4j * np.pi * omega * EPS)
    d = -1 / (4 * np.pi)

    def total(f):
        return np.sum(f * decay)

    ez = c * total(rv * lam * cos * first)
    ex = c * total(-rv * u0 / lam * xx)
    ey = c * total(-rv * u0 / lam * xy)
    hx = 1j * omega * EPS * c * total(rv / lam * xy)
    hy = -1j * omega * EPS * c * total(rv / lam * xx)
    hz = d * total(rh * lam / u0 * sin * first)
    hx += d * total(-rh / lam * xy)
    hy += d * total(-rh / lam * yy)
    te = rh / (lam * u0)
    ex += -1j * omega * MU * d * total(te * yy)
    ey += 1j * omega * MU * d * total(te * xy)
    return np.array([ex, ey, ez, hx, hy, hz])


def direct(k, dx, dy, dz):
    """Closed form of the Hertz dipole along x, unit moment."""
    r = np.sqrt(dx * dx + dy * dy + dz * dz)
    n = np.array([dx, dy, dz]) / r
    x = 1j * k * r
    wave = np.exp(-x) / (4 * np.pi * r)
    p = np.array([1.0, 0, 0])
    across = p - n * n[0]
    e = -1j * k * ETA * wave * (across * (1 + 1 / x + 1 / x**2) - 2 * n * n[0] * (1 / x + 1 / x**2))
    h = 1j * k * wave * (1 + 1 / x) * np.cross(p, n)
    return np.concatenate([e, h])


def field(megahertz, eps_r, sigma, height, at, wires=48, panels=8, nodes=16):
    omega = 2e6 * np.pi * megahertz
    k = omega / C
    eps = eps_r - 1j * sigma / (omega * EPS)
    half = np.pi / (2 * k)
    zeta = height + at[2]
    t, w = np.polynomial.legendre.leggauss(wires)
    total = np.zeros(6, complex)
    edges = np.linspace(-half, half, 25)
    lam, wl = path(k, zeta, panels, nodes)
    for a, b in zip(edges[:-1], edges[1:]):
        for s, ws in zip(0.5 * (a + b) + 0.5 * (b - a) * t, 0.5 * (b - a) * w):
            current = np.sin(k * (half - abs(s)))
            dx, dy = at[0] - s, at[1]
            if np.hypot(dx, dy) < 1e-9:
                dy = 1e-9
            total += ws * current * direct(k, dx, dy, at[2] - height)
            total += ws * current * reflected(k, omega, eps, dx, dy, zeta, lam, wl)
    return np.linalg.norm(total[:3]), np.linalg.norm(total[3:])


if __name__ == "__main__":
    number = 0
    for megahertz, eps_r, sigma, height in [(3.6, 13, 0.005, 2.5), (7.1, 13, 0.005, 3.0), (14.2, 3, 0.0001, 3.0), (28.4, 30, 0.02, 2.5)]:
        quarter = C / (4e6 * megahertz)
        for at in [(0, 0.3, 0.5), (0, 0.3, 1.8), (0.5 * quarter, 1.0, 1.0), (quarter, 0.3, 1.8), (quarter + 2, 3.0, 1.5), (0, 12.0, 1.5)]:
            number += 1
            one = field(megahertz, eps_r, sigma, height, at, wires=10)
            two = field(megahertz, eps_r, sigma, height, at, wires=14, panels=12, nodes=20)
            print('["13-%d", %g, %g, %g, %g, %.6f, %g, %g, %.7g, %.7g],' % (
                70 + number, megahertz, eps_r, sigma, height, at[0], at[1], at[2], two[0], two[1]),
                "# %.1e %.1e" % (abs(one[0] / two[0] - 1), abs(one[1] / two[1] - 1)), flush=True)
