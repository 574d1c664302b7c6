"""Evaluates one plant anew with scikit-learn's CategoricalNB on the arrays of the bench. Arguments: folder of the arrays.

The model is not fitted: its log probabilities are set to those that the bench wrote, so both sides reckon with the same
numbers. Each line of standard input, a method and a number of answered characters, is answered by the milliseconds that one
call took for one plant; "posterior" writes the log probabilities of the last call to posterior.f64.
"""
import json, sys, time
from pathlib import Path
import numpy as np
import sklearn
from sklearn.naive_bayes import CategoricalNB

folder = Path(sys.argv[1])
spec = json.loads((folder / "spec.json").read_text())
taxa, characters, states = spec["taxa"], spec["characters"], spec["states"]
# written character by character, state by state, taxon by taxon; the classifier wants taxa x states, in C order
chances = np.fromfile(folder / "chances.f32", dtype="<f4").reshape(characters, states, taxa)
logs = [np.ascontiguousarray(np.log(chances[j].astype(np.float64)).T) for j in range(characters)]


def model_of(size):
    model = CategoricalNB()
    model.classes_ = np.arange(taxa)
    model.n_features_in_ = size
    model.n_categories_ = np.full(size, states)
    model.class_count_ = np.ones(taxa)
    model.class_log_prior_ = np.full(taxa, -np.log(taxa))
    model.feature_log_prob_ = logs[:size]
    return model


models = {size: (model_of(size), np.array([spec["reports"][:size]])) for size in spec["sizes"]}
print(json.dumps({"version": sklearn.__version__}), flush=True)
result = None
for line in sys.stdin:
    words = line.split()
    if words[0] == "posterior":
        result[0].astype("<f8").tofile(folder / "posterior.f64")
        print(0, flush=True)
        continue
    model, plant = models[int(words[1])]
    method = getattr(model, words[0])
    start = time.perf_counter()
    result = method(plant)
    print((time.perf_counter() - start) * 1000, flush=True)
