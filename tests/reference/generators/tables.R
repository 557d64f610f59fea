# Reference values from R: quantiles, adjusted p-values, hypergeometric tails, Rao-Scott design effects and widened
# intervals, predictive values, likelihood ratios, corrected prevalence and partial verification by the formulas of
# the papers. Run from the repository root:  Rscript tests/reference/generators/tables.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
z <- function(confidence) qnorm((1 + confidence) / 2)

# --- quantiles ---
rows <- NULL
for (c in c(0.5, 0.8, 0.9, 0.95, 0.99, 0.999, 0.999999)) {
  rows <- rbind(rows, data.frame(id = paste0("normal-", c), distribution = "normal", degrees_of_freedom = "",
    confidence = c, expected = num(-qnorm((1 - c) / 2)), tolerance = "relative:1e-12", kind = "independent", source = paste0(tool, " qnorm")))
  for (df in c(1, 2, 3, 5, 10, 15, 28))
    rows <- rbind(rows, data.frame(id = paste0("student-", c, "-", df), distribution = "student", degrees_of_freedom = df,
      confidence = c, expected = num(-qt((1 - c) / 2, df)), tolerance = "relative:1e-10", kind = "independent", source = paste0(tool, " qt")))
}
rows$confidence <- trimws(formatC(rows$confidence, format = "g", digits = 7))
write("quantiles", rows)

# --- adjusted p-values ---
set.seed(20260105)
sets <- list(
  bh1995 = c(.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1),
  one = 0.03, ties = c(.01, .01, .02, .02, .5), reversed = c(.9, .5, .04, .03, .001), zeros = c(0, 0, 1, 1), tiny = c(1e-300, 1e-20, .049, .5),
  lots = signif(runif(40)^3, 6), sites = signif(runif(537)^2, 6))
stream <- .Random.seed # what is drawn below must not move what is drawn after it
set.seed(20261125)
for (i in 1:50) {
  count <- c(2, 3, 5, 9, 17, 40)[i %% 6 + 1]
  sets[[paste0("drawn-", i)]] <- switch(i %% 3 + 1, signif(runif(count), 6), signif(runif(count)^4, 6), round(runif(count)^2, 2))
}
.Random.seed <- stream
rows <- NULL
adjustments <- c(bonferroni = "bonferroni", holm = "holm", hochberg = "hochberg", hommel = "hommel", BH = "benjamini-hochberg", BY = "benjamini-yekutieli")
for (s in names(sets)) for (m in names(adjustments)) {
  p <- sets[[s]]
  rows <- rbind(rows, data.frame(id = paste0(s, "-", tolower(m)), method = adjustments[[m]],
    p_values = paste(num(p), collapse = " "), expected = paste(num(p.adjust(p, m)), collapse = " "),
    tolerance = "relative:1e-12", kind = "independent", source = paste0(tool, " p.adjust")))
}
write("adjusted-p-values", rows)

# --- clusters: design effect, widened Wilson ---
wilson <- function(x, n, q) {
  p <- x / n
  mid <- p + q^2 / (2 * n); half <- q * sqrt(p * (1 - p) / n + q^2 / (4 * n^2)); down <- 1 + q^2 / n
  c((mid - half) / down, (mid + half) / down)
}
weil <- list(
  "rat-control" = list(c(13,12,9,9,8,8,12,11,9,9,8,11,4,5,7,7), c(13,12,9,9,8,8,13,12,10,10,9,13,5,7,10,10)),
  "rat-treated" = list(c(12,11,10,9,10,9,9,8,8,4,7,4,5,3,3,0), c(12,11,10,9,11,10,10,9,9,5,9,7,10,6,10,7)))
for (i in 1:12) {
  m <- c(2, 3, 5, 6, 8, 12, 29, 30, 31, 60, 200, 900)[i]
  n <- rpois(m, 40) + 1
  weil[[paste0("drawn-", m)]] <- list(rbinom(m, n, rbeta(m, 1, 12)), n)
}
rows <- NULL
for (s in names(weil)) {
  y <- weil[[s]][[1]]; n <- weil[[s]][[2]]; m <- length(n); N <- sum(n); p <- sum(y) / N
  v <- m / ((m - 1) * N^2) * sum((y - n * p)^2); d <- N * v / (p * (1 - p)); used <- max(1, d)
  q <- if (m < 30) qt(.975, m - 1) else qnorm(.975)
  ends <- wilson(sum(y) / used, N / used, q)
  rows <- rbind(rows, data.frame(id = s, events = paste(y, collapse = " "), trials = paste(n, collapse = " "), confidence = 0.95,
    design_effect = num(d), variance = num(v), quantile = num(q), lower = num(ends[1]), upper = num(ends[2]),
    tolerance = "relative:1e-10", kind = "independent", source = paste0(tool, ": sums over the clusters as in the formula (generators/tables.R)")))
}
write("design-effects", rows)

# --- predictive values with logit limits (Mercaldo, Lau, Zhou 2007) ---
rows <- NULL
studies <- list(c(240,178,87,288), c(44,79,4,2465), c(32,8,2,185), c(7,10,14,840), c(231,27,32,54), c(80,20,27,73), c(152,17,20,802))
for (s in studies) for (p in c(.0001, .001, .004, .01, .03, .1, .4)) for (confidence in c(.9, .95)) {
  tp <- s[1]; fn <- s[2]; fp <- s[3]; tn <- s[4]; n1 <- tp + fn; n0 <- fp + tn; se <- tp / n1; sp <- tn / n0
  lp <- log(se * p / ((1 - sp) * (1 - p))); vp <- (1 - se) / se / n1 + sp / (1 - sp) / n0
  ln <- log(sp * (1 - p) / ((1 - se) * p)); vn <- se / (1 - se) / n1 + (1 - sp) / sp / n0
  for (measure in c("positive", "negative")) {
    l <- if (measure == "positive") lp else ln; v <- if (measure == "positive") vp else vn
    rows <- rbind(rows, data.frame(id = paste(c(measure, s, p, confidence), collapse = "-"), measure = measure, sensitivity = paste0(tp, "/", n1), specificity = paste0(tn, "/", n0),
      prevalence = formatC(p, format = "g"), confidence = confidence, value = num(plogis(l)), lower = num(plogis(l - z(confidence) * sqrt(v))), upper = num(plogis(l + z(confidence) * sqrt(v))),
      tolerance = "relative:1e-10", kind = "independent", source = paste0(tool, ": formula of Mercaldo et al. 2007 (generators/tables.R)")))
  }
}
write("predictive-values", rows)

# --- likelihood ratios: log-normal limits by a numerical gradient of ln LR over the two binomials ---
rows <- NULL
for (s in c(studies, list(c(44,7,1,168), c(113,63,3,651)))) for (confidence in c(.9, .95, .99)) for (measure in c("positive", "negative")) {
  tp <- s[1]; fn <- s[2]; fp <- s[3]; tn <- s[4]; n1 <- tp + fn; n0 <- fp + tn
  f <- function(a) if (measure == "positive") log(a[1] / (1 - a[2])) else log((1 - a[1]) / a[2])
  a <- c(tp / n1, tn / n0); va <- a * (1 - a) / c(n1, n0)
  g <- sapply(1:2, function(i) { h <- min(a[i], 1 - a[i]) * 1e-3; e <- c(0, 0); e[i] <- h; (8 * (f(a + e) - f(a - e)) - (f(a + 2 * e) - f(a - 2 * e))) / (12 * h) })
  s.e <- sqrt(sum(g^2 * va))
  rows <- rbind(rows, data.frame(id = paste(c(measure, s, confidence), collapse = "-"), measure = measure, true_positive = tp, false_negative = fn, false_positive = fp, true_negative = tn,
    confidence = confidence, value = num(exp(f(a))), lower = num(exp(f(a) - z(confidence) * s.e)), upper = num(exp(f(a) + z(confidence) * s.e)),
    tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, ": delta method by numerical gradient (generators/tables.R)")))
}
write("likelihood-ratios", rows)

# --- corrected prevalence: standard error by a numerical gradient ---
rows <- NULL
cases <- list(c(50,3330,103,122,399,401), c(2,1000,160,200,995,1000), c(120,1000,160,200,980,1000), c(700,1000,95,100,190,200), c(81,263,61,97,2391,2400), c(1322,903408,61,97,2391,2400),
              c(5,50,30,40,48,50), c(960,1000,180,200,95,100), c(10,100000,400,500,9990,10000))
for (k in cases) for (confidence in c(.9, .95)) for (known in c(FALSE, TRUE)) {
  a <- c(k[1] / k[2], k[3] / k[4], k[5] / k[6]); va <- a * (1 - a) / k[c(2, 4, 6)]
  if (known) va[2:3] <- 0
  f <- function(a) (a[1] + a[3] - 1) / (a[2] + a[3] - 1)
  g <- sapply(1:3, function(i) { h <- min(a[i], 1 - a[i]) * 1e-2; e <- c(0, 0, 0); e[i] <- h; (8 * (f(a + e) - f(a - e)) - (f(a + 2 * e) - f(a - 2 * e))) / (12 * h) })
  s.e <- sqrt(sum(g^2 * va)); est <- f(a)
  rows <- rbind(rows, data.frame(id = paste(c(k, confidence, known), collapse = "-"), successes = k[1], trials = k[2],
    sensitivity = if (known) num(a[2]) else paste0(k[3], "/", k[4]), specificity = if (known) num(a[3]) else paste0(k[5], "/", k[6]), confidence = confidence,
    unclipped = num(est), standard_error = num(s.e), unclipped_lower = num(est - z(confidence) * s.e), unclipped_upper = num(est + z(confidence) * s.e),
    lower = "", upper = "", tolerance = "relative:1e-7", kind = "independent", source = paste0(tool, ": delta method by numerical gradient; good to 1e-8 (generators/tables.R)")))
}
rows$trials <- formatC(rows$trials, format = "d", big.mark = "")
write("corrected-prevalence", rows)

# --- hypergeometric tails a second time, in double precision ---
rows <- NULL
for (k in list(c(6,20,7,12), c(23,602272,462,30000), c(36,60000,420,5000), c(3,50,5,10), c(12,100,40,30), c(10,1000000,100,100000))) {
  x <- k[1]; N <- k[2]; K <- k[3]; n <- k[4]
  rows <- rbind(rows, data.frame(id = paste0("phyper-", paste(format(k, scientific = FALSE, trim = TRUE), collapse = "-")), observed = x, population = format(N, scientific = FALSE), successes = K, draws = format(n, scientific = FALSE),
    point = num(dhyper(x, K, N - K, n)), upper = num(phyper(x - 1, K, N - K, n, lower.tail = FALSE)), lower = num(phyper(x, K, N - K, n)),
    tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, " dhyper and phyper")))
}
write.table(rows, "tests/reference/hypergeometric.csv", sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
