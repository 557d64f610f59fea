# Reference values of planning: by plain search and brute force, with R's own quantiles and tails.
# Run from the repository root:  Rscript tests/reference/generators/plans.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
whole <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 0, format = "f")))
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
set.seed(20260214)
first_true <- function(f, low, high) { while (high - low > 1) { mid <- floor((low + high) / 2); if (f(mid)) high <- mid else low <- mid }; high }

# --- tests for a Wilson interval of a given width ---
width <- function(n, p, c, d) { m <- n / d; z <- qnorm((1 + c) / 2); z * sqrt(4 * p * (1 - p) * m + z^2) / (m + z^2) }
cases <- rbind(
  expand.grid(p = c(0, .0005, .001, .01, .1, .3, .5, .9, 1), w = c(.3, .1, .02, .001), c = .95, d = 1),
  expand.grid(p = c(.0015, .05, .6), w = c(.05, .004), c = c(.8, .9, .99), d = c(1, 1.7, 4.25)))
rows <- NULL
for (i in seq_len(nrow(cases))) with(cases[i, ], {
  n <- first_true(function(n) width(n, p, c, d) <= w, 0, 1e12)
  rows <<- rbind(rows, data.frame(id = paste(p, w, c, d, sep = "-"), proportion = num(p), width = num(w), confidence = num(c), design_effect = num(d),
    tests = whole(n), achieved = num(width(n, p, c, d)), tolerance = "relative:1e-10", kind = "independent", source = paste0(tool, ": search over the width formula (generators/plans.R)")))
})
write("plans-width", rows)

# --- tests without an event that rule out a rate: by the exact upper limit itself ---
rows <- NULL
for (r in c(.9, .5, .2, .1, .05, .04, .03, .02, .01, .005, .002, .001, .0005, .0001, 1e-5, 1e-6, 1e-7)) for (c in c(.8, .9, .95, .99)) {
  # half a unit in the twelfth digit: a bound that is met exactly is met
  n <- first_true(function(n) qbeta(c, 1, n) <= r * (1 + 1e-12), 0, 1e10)
  rows <- rbind(rows, data.frame(id = paste(r, c, sep = "-"), rate = num(r), confidence = num(c), design_effect = 1, tests = whole(n), achieved = num(-expm1(n * log1p(-r))),
    upper = num(qbeta(c, 1, n)), tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, ": search over qbeta (generators/plans.R)")))
}
write("plans-zero-events", rows)

# --- audits: brute force over every number of verified positives ---
rows <- NULL
cases <- rbind(expand.grid(se = c(.5, .7, .9), sp = c(.99, .998), prev = c(.005, .03), w = c(.15, .3), N = c(20000, 500000), c = .95),
               expand.grid(se = c(.6, .8), sp = c(.95, .999), prev = .1, w = c(.1, .25), N = 5000, c = c(.9, .99)))
for (i in seq_len(nrow(cases))) with(cases[i, ], {
  t <- prev * se + (1 - prev) * (1 - sp); P <- round(N * t); Q <- N - P
  ppv <- prev * se / t; miss <- prev * (1 - se) / (1 - t)
  wid <- function(n1, n0) { s <- qnorm((1 + c) / 2) * sqrt(1 / (N * t * (1 - t)) + (1 - ppv) / ppv / n1 + (1 - miss) / miss / n0); l <- qlogis(se); plogis(l + s) - plogis(l - s) }
  beside <- function(n1) if (wid(n1, Q) > w) NA else first_true(function(n0) wid(n1, n0) <= w, 0, Q)
  all <- beside(P)
  best <- if (is.na(all)) NA else { n0 <- sapply(1:P, beside); min(1:P + n0, na.rm = TRUE) }
  rows <<- rbind(rows, data.frame(id = paste(se, sp, prev, w, N, c, sep = "-"), sensitivity = num(se), specificity = num(sp), prevalence = num(prev), width = num(w), screens = whole(N), confidence = num(c),
    positives = whole(P), beside_all = whole(all), fewest = whole(best), achieved = if (is.na(all)) "undefined" else num(wid(P, all)), everything = num(wid(P, Q)),
    tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, ": brute force over the variance formula (generators/plans.R)")))
})
write("plans-audit", rows)

# --- power to flag a lot: both binomials summed, each critical number by phyper ---
power <- function(n, rate, excess, lots, other, threshold) {
  M <- if (is.na(other)) (lots - 1) * n else other
  ys <- qbinom(1e-15, M, rate):qbinom(1e-15, M, rate, lower.tail = FALSE)
  sum(sapply(ys, function(y) {
    x <- 1:min(n, 3 * (y + 20) * n / M + 60)
    p <- phyper(x - 1, x + y, n + M - x - y, n, lower.tail = FALSE)
    hit <- which(p * lots < threshold)
    if (length(hit) == 0) 0 else dbinom(y, M, rate) * pbinom(x[hit[1]] - 1, n, rate + excess, lower.tail = FALSE)
  }))
}
rows <- NULL
cases <- rbind(expand.grid(rate = c(0, .0005, .002, .01), excess = c(.002, .01, .05), lots = c(2, 8, 40), other = NA, threshold = .01),
               expand.grid(rate = c(.001, .02), excess = c(.01, .1), lots = c(5, 20), other = c(3000, 40000), threshold = c(.01, .05)))
for (i in seq_len(nrow(cases))) with(cases[i, ], {
  n <- round(c(30, 100, 400, 1000)[(i - 1) %% 4 + 1] * sqrt(.01 / excess) + 5)
  rows <<- rbind(rows, data.frame(id = paste(n, rate, excess, lots, other, threshold, sep = "-"), runs = whole(n), rate = num(rate), excess = num(excess), lots = lots,
    other_runs = ifelse(is.na(other), "", whole(other)), threshold = num(threshold), power = num(power(n, rate, excess, lots, other, threshold)),
    # R's phyper and pbinom carry about ten digits; parts of the sum below 1e-13 are left out.
    tolerance = "absolute:1e-11", kind = "independent", source = paste0(tool, " dbinom; pbinom; phyper (generators/plans.R)")))
})
write("plans-lot-power", rows)

# The numbers themselves: every size from 1 upwards, in R. The answer is the first size from which no later one of the scan falls below.
rows <- NULL
for (k in list(c(.001, .05, 5, NA, .8), c(.002, .1, 10, NA, .9), c(.01, .2, 3, NA, .8), c(0, .05, 4, NA, .5), c(.005, .15, 20, 4000, .8), c(.02, .3, 6, 2000, .95), c(.001, .03, 8, NA, .6), c(.01, .1, 12, 1500, .7))) {
  end <- 600
  p <- sapply(1:end, function(n) power(n, k[1], k[2], k[3], k[4], .01))
  answer <- max(which(p < k[5])) + 1
  stopifnot(answer + 60 < end)
  rows <- rbind(rows, data.frame(id = paste(k, collapse = "-"), rate = num(k[1]), excess = num(k[2]), lots = k[3], other_runs = ifelse(is.na(k[4]), "", whole(k[4])), power = num(k[5]),
    runs = answer, achieved = num(p[answer]), one_fewer = num(p[answer - 1]), tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, ": every size up to ", end, " (generators/plans.R)")))
}
write("plans-lot-runs", rows)
