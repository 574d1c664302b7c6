# Makes values.json: Rscript make-values.R > values.json
samples <- list(
  capsules = c(53, 56, 47, 50, 47, 55, 48, 51, 49, 53, 43, 56),
  seeds = c(0.98, 0.89, 0.8, 1.01, 1.01, 0.91, 0.97, 0.95, 1, 0.84),
  one = c(7),
  two = c(3, 1),
  ties = c(2, 2, 2, 5, 5, 9, 9, 9, 9, 11, 20),
  negative = c(-3.5, 0, 2.25, -1, 8, 8, 1e3)
)
ps <- c(0, 0.05, 0.1, 0.25, 0.3, 0.5, 0.6, 0.75, 0.9, 0.95, 1)
number <- function(v) paste(formatC(v, digits = 17, format = "g", width = 1), collapse = ",")
rows <- character(0)
for (name in names(samples)) for (type in 1:9) {
  q <- quantile(samples[[name]], ps, type = type, names = FALSE)
  rows <- c(rows, sprintf('    {"sample":"%s","type":%d,"quantiles":[%s]}', name, type, number(q)))
}
cat("{\n")
cat(sprintf('  "made": "%s",\n', R.version.string))
cat(sprintf('  "p": [%s],\n', number(ps)))
cat('  "samples": {\n', paste(sprintf('    "%s": [%s]', names(samples), sapply(samples, number)), collapse = ",\n"), '\n  },\n', sep = "")
cat('  "quantiles": [\n', paste(rows, collapse = ",\n"), "\n  ]\n}\n", sep = "")
