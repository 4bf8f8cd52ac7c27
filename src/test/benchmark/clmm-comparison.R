# The static part of the competency model by R's ordinal::clmm (Laplace, logit link), on the scores that
# ClmmComparison writes. Prints the versions, the log-likelihood and the CPU seconds of the fit alone.
# Usage: Rscript clmm-comparison.R scores.csv
suppressPackageStartupMessages(library(ordinal))
scores <- read.csv(commandArgs(trailingOnly = TRUE)[1], stringsAsFactors = TRUE)
scores$y <- factor(scores$y, ordered = TRUE)
started <- proc.time()
fit <- clmm(y ~ step + x1 + x2 + x3 + (1 | trainee) + (1 | supervisor) + (1 | assessment), data = scores)
used <- proc.time() - started
cat("version R", as.character(getRversion()), "ordinal", as.character(packageVersion("ordinal")), "\n")
cat("loglik", format(as.numeric(logLik(fit)), digits = 12), "\n")
cat("cpu", used[["user.self"]] + used[["sys.self"]], "\n")
