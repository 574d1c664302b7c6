"""Makes values.json: leave-one-out on Fisher's irises with scikit-learn's GaussianNB.

Run with Debian's python3 and scikit-learn: python3 make-values.py /work/shared/data/matrices/iris.csv > values.json
Model options: priors 1/3 each, var_smoothing 0, so each class has its mean and its variance divided by n.
"""
import csv, json, sys
import numpy as np, sklearn
from sklearn.naive_bayes import GaussianNB
from sklearn.metrics import log_loss

rows = list(csv.DictReader(open(sys.argv[1])))
names = ["Sepal.Length", "Sepal.Width", "Petal.Length", "Petal.Width"]
X = np.array([[float(r[n]) for n in names] for r in rows]); y = np.array([r["Species"] for r in rows])
classes = sorted(set(y)); P = np.zeros((len(y), 3))
for i in range(len(y)):
    keep = np.arange(len(y)) != i
    P[i] = GaussianNB(priors=[1/3]*3, var_smoothing=0).fit(X[keep], y[keep]).predict_proba(X[i:i+1])[0]
right = P.argmax(1) == np.array([classes.index(s) for s in y])
print(json.dumps({"program": f"scikit-learn {sklearn.__version__}", "correct": int(right.sum()), "of": len(y),
  "logLoss": log_loss(y, P, labels=classes),
  "ofTheTrueSpecies": [float(P[i, classes.index(y[i])]) for i in range(len(y))]}, indent=0))
