"""Makes values.json with mpmath (50 digits): python3 make-values.py > values.json"""
import json, mpmath as mp
mp.mp.dps = 50
def log_cdf(z): return mp.log(mp.erfc(-mp.mpf(z) / mp.sqrt(2)) / 2)
def log_between(a, b):
    a, b = mp.mpf(a), mp.mpf(b)
    if a > 0: a, b = -b, -a
    mp.mp.dps = 400
    r = mp.log((mp.erfc(-b / mp.sqrt(2)) - mp.erfc(-a / mp.sqrt(2))) / 2)
    mp.mp.dps = 50
    return r
z = [-1000, -100, -37.5, -10, -6, -5.6, -3, -1, -0.6, -0.1, 0, 0.3, 0.67, 0.7, 2, 5, 8, 20]
pairs = [(-1, 2), (30, 30.1), (-2, -1.999999), (8, 9), (-0.3, -0.29), (-40, -39), (-50, 60), (5, 5.0005), (0, 1e-9), (-3, -2.9)]
p = [1e-300, 1e-20, 0.005, 0.1, 0.3, 0.5, 0.75, 0.9, 0.995]
def quantile(p): return mp.findroot(lambda x: log_cdf(x) - mp.log(mp.mpf(p)), -mp.sqrt(-2 * mp.log(mp.mpf(p))) if p < 0.01 else 0)
print(json.dumps({"program": f"mpmath {mp.__version__}, 50 digits",
  "logCdf": [[a, float(log_cdf(a))] for a in z],
  "logBetween": [[a, b, float(log_between(a, b))] for a, b in pairs],
  "quantile": [[a, float(quantile(a))] for a in p]}, indent=0))
