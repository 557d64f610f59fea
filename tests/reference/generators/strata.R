# Reference values from R: the common difference of two proportions over strata (package metafor), and the accuracy
# of several tests used side by side.
# Run from the repository root with Debian's r-base-core and r-cran-metafor:  Rscript tests/reference/generators/strata.R
suppressMessages(library(metafor))
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)
set.seed(20261125)

# --- Mantel-Haenszel difference with Sato's variance ---
rows <- NULL
for (case in 1:60) {
  k <- sample(c(1, 2, 3, 5, 8, 20), 1)
  n1 <- sample(c(1, 2, 5, 30, 400, 20000), k, TRUE) + sample(0:9, k, TRUE)
  n2 <- sample(c(1, 2, 5, 30, 400, 20000), k, TRUE) + sample(0:9, k, TRUE)
  p <- runif(1)^sample(1:8, 1)
  x1 <- rbinom(k, n1, p); x2 <- rbinom(k, n2, min(1, p * runif(1, 0.2, 3)))
  if (sum(x1, x2) == 0) x1[1] <- 1
  confidence <- sample(c(0.9, 0.95, 0.99), 1)
  fit <- rma.mh(measure = "RD", ai = x1, n1i = n1, ci = x2, n2i = n2, level = 100 * confidence, digits = 12, drop00 = FALSE)
  half <- qnorm((1 + confidence) / 2) * fit$se
  rows <- rbind(rows, data.frame(id = paste0("mantel-haenszel-", case),
    strata = paste(paste0(x1, "/", n1, ":", x2, "/", n2), collapse = " "), confidence = confidence,
    estimate = num(as.numeric(fit$beta)), lower = num(max(-1, as.numeric(fit$beta) - half)), upper = num(min(1, as.numeric(fit$beta) + half)),
    tolerance = "absolute:1e-11", kind = "independent",
    source = paste0(tool, " metafor ", packageVersion("metafor"), " rma.mh measure RD (generators/strata.R)")))
}
write("stratified-differences", rows)

# --- accuracy of a mixture: weighted mean and the variance of that mean, counts only ---
rows <- NULL
for (case in 1:60) {
  k <- sample(2:4, 1)
  n <- sample(c(3, 50, 400, 3000), k, TRUE) + sample(1:9, k, TRUE)
  x <- pmax(1, pmin(n - 1, rbinom(k, n, runif(k, 0.5, 0.999))))
  w <- sample(c(1, 20, 777, 100000), k, TRUE)
  v <- x / n
  rows <- rbind(rows, data.frame(id = paste0("mixture-", case), parts = paste(paste0(x, "/", n, ":", w), collapse = " "),
    value = num(weighted.mean(v, w)), variance = num(sum((w / sum(w))^2 * v * (1 - v) / n)),
    tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, " weighted.mean and the variance of a weighted mean (generators/strata.R)")))
}
write("accuracy-mixtures", rows)
