# Reference values of the coverage and mean width of intervals of one proportion: R's own intervals where it has them, dbinom over all counts.
# Run from the repository root:  Rscript tests/reference/generators/coverage.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
limits <- function(method, x, n) {
  z <- qnorm(.975)
  switch(method,
    "wilson" = { l <- suppressWarnings(prop.test(x, n, correct = FALSE))$conf.int; l[1:2] },
    # Newcombe's closed form; prop.test(correct = TRUE) leaves the correction out at one half.
    "wilson-continuity" = { p <- x / n; q <- 1 - p
      c(if (x == 0) 0 else (2*n*p + z^2 - 1 - z * sqrt(z^2 - 2 - 1/n + 4*p*(n*q + 1))) / (2*(n + z^2)),
        if (x == n) 1 else (2*n*p + z^2 + 1 + z * sqrt(z^2 + 2 - 1/n + 4*p*(n*q - 1))) / (2*(n + z^2))) },
    "clopper-pearson" = binom.test(x, n)$conf.int[1:2],
    "agresti-coull" = { m <- n + z^2; c0 <- (x + z^2/2) / m; pmin(1, pmax(0, c0 + c(-1, 1) * z * sqrt(c0 * (1 - c0) / m))) },
    "jeffreys" = c(if (x == 0) 0 else qbeta(.025, x + .5, n - x + .5), if (x == n) 1 else qbeta(.975, x + .5, n - x + .5)),
    "mid-p" = { f <- function(p, tail) pbinom(x, n, p) - dbinom(x, n, p) / 2 - tail
      c(if (x == 0) 0 else uniroot(f, c(1e-12, 1 - 1e-12), tail = .975, tol = 1e-14)$root, if (x == n) 1 else uniroot(f, c(1e-12, 1 - 1e-12), tail = .025, tol = 1e-14)$root) })
}
rows <- NULL
for (method in c("wilson", "wilson-continuity", "clopper-pearson", "agresti-coull", "jeffreys", "mid-p")) for (n in c(5, 10, 20, 50, 100, 200)) {
  ends <- sapply(0:n, function(x) limits(method, x, n))
  for (p in c(.001, .0123, .0456, .07, .11, .197, .25, .333, .41, .4999)) {
    d <- dbinom(0:n, n, p)
    rows <- rbind(rows, data.frame(id = paste(method, n, p, sep = "-"), method = method, trials = n, confidence = 0.95, rate = num(p), coverage = num(sum(d[ends[1, ] <= p & p <= ends[2, ]])),
      width = num(sum(d * (ends[2, ] - ends[1, ]))), tolerance = "absolute:1e-10", kind = "independent", source = paste0(tool, " dbinom over limits by prop.test; binom.test; qbeta; uniroot (generators/coverage.R)")))
  }
}
write.table(rows, "tests/reference/interval-coverages-generated.csv", sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
