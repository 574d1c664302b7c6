"""Evaluates one plant anew with scikit-learn's CategoricalNB on the arrays of the bench. Arguments: folder of the arrays.

The model is not fitted: its log probabilities are set to those that the bench wrote, so both sides reckon with the same
numbers. Timed is predict_log_proba alone, for one plant with every character answered, as one would call it after a look.
"""
import json, sys, time
from pathlib import Path
import numpy as np
import sklearn
from sklearn.naive_bayes import CategoricalNB

folder = Path(sys.argv[1])
spec = json.loads((folder / "spec.json").read_text())
taxa, characters, states, runs = spec["taxa"], spec["characters"], spec["states"], spec["runs"]
# written character by character, state by state, taxon by taxon; the classifier wants taxa x states, in C order
chances = np.fromfile(folder / "chances.f32", dtype="<f4").reshape(characters, states, taxa)
logs = [np.ascontiguousarray(np.log(chances[j].astype(np.float64)).T) for j in range(characters)]
all_times = []
for size in spec["sizes"]:
    model = CategoricalNB()
    model.classes_ = np.arange(taxa)
    model.n_features_in_ = size
    model.n_categories_ = np.full(size, states)
    model.class_count_ = np.ones(taxa)
    model.class_log_prior_ = np.full(taxa, -np.log(taxa))
    model.feature_log_prob_ = logs[:size]
    plant = np.array([spec["reports"][:size]])
    for _ in range(3):
        model.predict_log_proba(plant)
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        result = model.predict_log_proba(plant)
        times.append((time.perf_counter() - start) * 1000)
    all_times.append(times)
result[0].astype("<f8").tofile(folder / "posterior.f64")
print(json.dumps({"version": sklearn.__version__, "times": all_times}))
