# Reference values from R: several groups compared within strata (the generalised Mantel-Haenszel test, mantelhaen.test of stats),
# and twice the smaller binomial tail (pbinom).
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/association.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)
set.seed(20261127)

rows <- NULL
case <- 0
while (case < 60) {
  k <- sample(c(3, 4, 5, 8, 15), 1); s <- sample(c(2, 3, 6, 20, 40), 1)
  n <- matrix(sample(c(2, 5, 30, 400, 20000), k * s, TRUE) + sample(0:9, k * s, TRUE), k, s)
  base <- runif(s)^sample(1:7, 1)
  odds <- exp(rnorm(k, 0, sample(c(0, 0.3, 1), 1)))
  p <- outer(odds, base / (1 - base)); p <- p / (1 + p)
  x <- matrix(rbinom(k * s, n, p), k, s)
  # A stratum without an event, or with nothing else, says nothing; R would divide by 0.
  if (any(colSums(x) == 0) || any(colSums(x) == colSums(n))) next
  table <- array(0, c(k, 2, s))
  table[, 1, ] <- x; table[, 2, ] <- n - x
  # R leaves out the last group, which may have nothing but 0 expected; a singular matrix is an error there.
  test <- try(mantelhaen.test(table), silent = TRUE)
  if (inherits(test, "try-error")) next
  case <- case + 1
  strata <- sapply(1:s, function(j) paste(paste0(x[, j], "/", n[, j]), collapse = " "))
  rows <- rbind(rows, data.frame(id = paste0("association-", case), strata = paste(strata, collapse = ":"),
    statistic = num(as.numeric(test$statistic)), degrees_of_freedom = as.integer(test$parameter), p_value = num(test$p.value),
    tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " mantelhaen.test (generators/association.R)")))
}
write("general-association", rows)

rows <- NULL
case <- 0
while (case < 60) {
  n <- sample(c(1, 5, 40, 700, 30000, 1000000), 1) + sample(0:9, 1)
  target <- runif(1)^sample(1:6, 1)
  x <- min(n, max(0, rbinom(1, n, min(1, target * runif(1, 0.3, 2.5)))))
  d <- sample(c(1, 1, 1.5, 4), 1)
  tail <- min(pbinom(x, n, target), pbinom(x - 1, n, target, lower.tail = FALSE))
  if (tail < 1e-200) next
  case <- case + 1
  p <- if (tail >= 0.5) 1 else 2 * pnorm(qnorm(tail) / sqrt(d))
  rows <- rbind(rows, data.frame(id = paste0("chance-", case), target = num(target), events = x, trials = n, design_effect = d, p_value = num(min(1, p)),
    tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " pbinom and pnorm (generators/association.R)")))
}
write("funnel-chances", rows)
