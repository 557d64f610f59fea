# Reference values from R for the comparison of sites: funnels, heterogeneity, strata, standardisation.
# Run from the repository root with Debian's r-base-core and r-cran-metafor:  Rscript tests/reference/generators/sites.R
suppressMessages(library(metafor))
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
int <- function(x) paste(format(x, scientific = FALSE, trim = TRUE), collapse = " ")
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)
set.seed(20261126)
draw <- function(k, most = 20000) {
  n <- sample(c(1, 3, 12, 60, 400, 3000, most), k, TRUE) + sample(0:9, k, TRUE)
  p <- runif(1)^sample(1:7, 1)
  s <- sample(c(1e6, 500, 40, 8), 1)
  list(x = rbinom(k, n, rbeta(k, p * s, (1 - p) * s)), n = n)
}

# --- funnel limits ---
rows <- NULL
for (case in 1:80) {
  theta <- signif(runif(1)^sample(1:7, 1), 6); n <- sample(c(1, 7, 60, 900, 30000, 2000000), 1) + sample(0:9, 1); q <- sample(c(.001, .005, .025, .1, .9, .975, .995, .999), 1)
  r <- qbinom(q, n, theta)
  step <- dbinom(r, n, theta)
  excess <- if (q < .5) pbinom(r, n, theta) - q else (1 - q) - pbinom(r, n, theta, lower.tail = FALSE)
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), target = num(theta), trials = int(n), probability = num(q), limit = num((r - excess / step) / n),
    tolerance = "absolute:1e-11", kind = "independent", source = paste0(tool, " qbinom and pbinom (generators/sites.R)")))
}
write("funnel-limits", rows)

# --- funnels ---
rows <- NULL
while (is.null(rows) || nrow(rows) < 60) {
  d <- draw(sample(c(2, 3, 5, 12, 40), 1)); scale <- sample(c("proportion", "arcsine-root"), 1); w <- sample(c(0, .1, .2), 1)
  given <- runif(1) < .3; theta <- if (given) signif(runif(1, .001, .6), 4) else sum(d$x) / sum(d$n)
  if (theta == 0 || theta == 1) next
  if (scale == "proportion") { y <- d$x / d$n; t <- theta; s <- sqrt(theta * (1 - theta) / d$n) } else { y <- asin(sqrt(d$x / d$n)); t <- asin(sqrt(theta)); s <- 1 / (2 * sqrt(d$n)) }
  z <- (y - t) / s; ends <- quantile(z, c(w, 1 - w), type = 7); zw <- pmin(pmax(z, ends[1]), ends[2])
  k <- length(z); phi <- sum(zw^2) / k; W <- 1 / s^2
  tau2 <- max(0, (k * phi - (k - 1)) / (sum(W) - sum(W^2) / sum(W)))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", nrow(rows) + is.null(rows)), events = int(d$x), trials = int(d$n), target = if (given) num(theta) else "", scale = scale, winsorised = num(w),
    centre = num(theta), overdispersion = num(mean(z^2)), winsorised_overdispersion = num(phi), between_variance = num(tau2), scores = list_(z), additive_scores = list_((y - t) / sqrt(s^2 + tau2)),
    multiplicative_lower = "", multiplicative_upper = "", additive_lower = "", additive_upper = "",
    tolerance = "absolute:1e-8", kind = "independent", source = paste0(tool, " quantile type 7 and the formulas of Spiegelhalter 2005 (generators/sites.R)")))
  if (max(abs(z)) > 1e3) rows <- rows[-nrow(rows), ]
}
rows$id <- paste0("drawn-", seq_len(nrow(rows)))
write("funnels", rows)

# --- k x 2 tables ---
rows <- NULL
for (case in 1:70) {
  d <- draw(sample(2:12, 1)); small <- case > 30
  if (small) { k <- sample(2:6, 1); d$n <- sample(1:25, k, TRUE); d$x <- rbinom(k, d$n, runif(1)) }
  if (sum(d$x) == 0) d$x[1] <- 1
  if (sum(d$x) == sum(d$n)) d$x[1] <- d$x[1] - 1
  table <- rbind(d$x, d$n - d$x); test <- suppressWarnings(chisq.test(table, correct = FALSE)); e <- test$expected
  exact <- if (small && length(d$n) > 2) fisher.test(table, workspace = 2e7)$p.value else NA
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), events = int(d$x), trials = int(d$n), statistic = num(test$statistic),
    likelihood_ratio = num(2 * sum(ifelse(table > 0, table * log(table / e), 0))), p_value = num(pchisq(test$statistic, test$parameter, lower.tail = FALSE)), degrees_of_freedom = int(test$parameter),
    exact_p = if (is.na(exact)) "" else num(exact), tolerance = if (small) "relative:1e-7" else "relative:1e-8", kind = "independent", source = paste0(tool, " chisq.test and fisher.test (generators/sites.R)")))
}
rows$p_value[as.numeric(rows$p_value) < 1e-200] <- ""
rows$likelihood_ratio[as.numeric(rows$likelihood_ratio) < 1e-6] <- ""
rows$statistic[as.numeric(rows$statistic) < 1e-12] <- ""
write("homogeneity", rows)

# --- pairs ---
wilson <- function(x, n, z) { p <- x / n; m <- (p + z^2 / (2 * n)) / (1 + z^2 / n); h <- z * sqrt(p * (1 - p) / n + z^2 / (4 * n^2)) / (1 + z^2 / n); c(m - h, m + h) }
newcombe <- function(a, n, b, m, c) { z <- qnorm((1 + c) / 2); p <- a / n; q <- b / m; u <- wilson(a, n, z); v <- wilson(b, m, z); d <- p - q
  c(d, max(-1, d - sqrt((p - u[1])^2 + (v[2] - q)^2)), min(1, d + sqrt((u[2] - p)^2 + (q - v[1])^2))) }
rows <- NULL; pairs <- NULL
for (case in 1:55) {
  d <- draw(sample(2:9, 1), 5000); k <- length(d$x); confidence <- sample(c(.9, .95, .99), 1)
  i <- sort(sample(k, 2)); p <- d$x / d$n
  range <- sqrt(qchisq(confidence, k - 1)) * sqrt(sum((p * (1 - p) / d$n)[i]))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), events = int(d$x), trials = int(d$n), confidence = confidence, first = i[1] - 1, second = i[2] - 1, difference = num(p[i[1]] - p[i[2]]),
    critical_range = num(range), tolerance = "absolute:1e-12", kind = "independent", source = paste0(tool, " qchisq (generators/sites.R)")))
  all <- combn(k, 2)
  fisher <- apply(all, 2, function(j) fisher.test(rbind(d$x[j], d$n[j] - d$x[j]))$p.value)
  at <- which(all[1, ] == i[1] & all[2, ] == i[2])
  alone <- newcombe(d$x[i[1]], d$n[i[1]], d$x[i[2]], d$n[i[2]], confidence); each <- newcombe(d$x[i[1]], d$n[i[1]], d$x[i[2]], d$n[i[2]], 1 - (1 - confidence) / ncol(all))
  pairs <- rbind(pairs, data.frame(id = paste0("drawn-", case), events = int(d$x), trials = int(d$n), confidence = confidence, first = i[1] - 1, second = i[2] - 1, lower = num(alone[2]), upper = num(alone[3]),
    simultaneous_lower = num(each[2]), simultaneous_upper = num(each[3]), p_value = num(min(1, fisher[at])), adjusted = num(p.adjust(pmin(1, fisher), "holm")[at]),
    tolerance = "absolute:1e-9", kind = "independent", source = paste0(tool, " fisher.test; p.adjust; the formula of Newcombe 1998 (generators/sites.R)")))
}
write("marascuilo", rows); write("pair-differences", pairs)

# --- random effects ---
rows <- NULL
methods <- c("dersimonian-laird" = "DL", "paule-mandel" = "PM", "restricted-maximum-likelihood" = "REML", "maximum-likelihood" = "ML", "hedges-olkin" = "HE")
for (case in 1:120) {
  k <- sample(c(2, 3, 5, 10, 30), 1); v <- signif(exp(rnorm(k, -1, sample(c(.2, 1, 2), 1))), 8); y <- signif(rnorm(k, 1, sqrt(v + sample(c(0, .1, 1), 1))), 8)
  m <- sample(names(methods), 1); confidence <- sample(c(.9, .95), 1)
  control <- list(threshold = 1e-12, maxiter = 20000, tol = 1e-12)
  fit <- tryCatch(suppressWarnings(rma(y, v, method = methods[[m]], level = 100 * confidence, control = control)), error = function(e) NULL)
  if (is.null(fit) || (fit$tau2 > 0 && fit$tau2 < 1e-5)) next
  # a maximum that is not the highest is no maximum: the likelihood is looked at over a lattice
  if (m %in% c("restricted-maximum-likelihood", "maximum-likelihood")) {
    log_ <- function(t) { w <- 1 / (v + t); mu <- sum(w * y) / sum(w); -.5 * (sum(log(v + t)) + sum(w * (y - mu)^2) + if (m == "restricted-maximum-likelihood") log(sum(w)) else 0) }
    if (any(sapply(c(0, exp(seq(-12, 4, .1))), log_) > log_(fit$tau2) + 1e-9)) next
  }
  knapp <- suppressWarnings(rma(y, v, method = methods[[m]], test = "knha", tau2 = fit$tau2, control = control))
  ends <- suppressWarnings(confint(rma(y, v, method = "DL", level = 100 * confidence), control = list(tol = 1e-13, maxiter = 10000, tau2.max = 1e6)))$random["tau^2", 2:3]
  fixed <- rma(y, v, method = "FE"); half <- if (k > 2) qt((1 + confidence) / 2, k - 2) * sqrt(fit$tau2 + fit$se^2) else NA
  typical <- (k - 1) * sum(1 / v) / (sum(1 / v)^2 - sum(1 / v^2))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), values = list_(y), variances = list_(v), method = m, confidence = confidence, common = num(fixed$beta), common_error = num(fixed$se), q = num(fit$QE),
    i_squared_from_q = num(max(0, (fit$QE - (k - 1)) / fit$QE)), h_squared = num(fit$QE / (k - 1)), between_variance = num(fit$tau2), between_lower = num(ends[1]), between_upper = num(ends[2]),
    i_squared = num(fit$tau2 / (fit$tau2 + typical)), mean = num(fit$beta), standard_error = num(fit$se), lower = num(fit$ci.lb), upper = num(fit$ci.ub), hartung_knapp_error = num(knapp$se),
    prediction_lower = num(fit$beta - half), prediction_upper = num(fit$beta + half),
    tolerance = "absolute:2e-7", kind = "independent", source = paste0(tool, " metafor ", packageVersion("metafor"), " rma and confint (generators/sites.R)")))
}
write("random-effects", rows)

# --- strata ---
rows <- NULL
while (is.null(rows) || nrow(rows) < 60) {
  k <- sample(c(1, 2, 3, 5, 8, 20), 1)
  n1 <- sample(c(2, 5, 30, 400, 20000), k, TRUE) + sample(0:9, k, TRUE); n2 <- sample(c(2, 5, 30, 400, 20000), k, TRUE) + sample(0:9, k, TRUE)
  p <- runif(1)^sample(1:6, 1); x1 <- rbinom(k, n1, p); x2 <- rbinom(k, n2, min(.95, p * runif(1, .2, 3)))
  used <- x1 + x2 > 0 & x1 + x2 < n1 + n2
  if (!any(used)) next
  a <- x1[used]; b <- (n1 - x1)[used]; c <- x2[used]; d <- (n2 - x2)[used]; N <- a + b + c + d
  R <- sum(a * d / N); S <- sum(b * c / N)
  if (R == 0 || S == 0) next
  confidence <- sample(c(.9, .95, .99), 1)
  fit <- rma.mh(measure = "OR", ai = x1, n1i = n1, ci = x2, n2i = n2, level = 100 * confidence, drop00 = TRUE)
  E <- (a + b) * (a + c) / N; V <- (a + b) * (c + d) * (a + c) * (b + d) / (N^2 * (N - 1)); dist <- abs(sum(a - E))
  psi <- R / S
  A <- mapply(function(n1, n2, m) { lo <- max(0, m - n2); hi <- min(n1, m); uniroot(function(A) A * (n2 - m + A) - psi * (n1 - A) * (m - A), c(lo, hi), tol = 1e-14 * hi)$root }, a + b, c + d, a + c)
  vA <- 1 / (1 / A + 1 / (a + b - A) + 1 / (a + c - A) + 1 / (d - a + A)); bd <- sum((a - A)^2 / vA); ta <- bd - sum(a - A)^2 / sum(vA); df <- sum(used) - 1
  rows <- rbind(rows, data.frame(id = paste0("drawn-", nrow(rows)), strata = paste(paste0(x1, "/", n1, ":", x2, "/", n2), collapse = " "), confidence = confidence, odds_ratio = num(exp(as.numeric(fit$beta))),
    lower = num(exp(fit$ci.lb)), upper = num(exp(fit$ci.ub)), statistic = num(dist^2 / sum(V)), p_value = num(pchisq(dist^2 / sum(V), 1, lower.tail = FALSE)),
    corrected_statistic = num(max(0, dist - .5)^2 / sum(V)), corrected_p_value = num(pchisq(max(0, dist - .5)^2 / sum(V), 1, lower.tail = FALSE)),
    breslow_day = if (df > 0) num(bd) else "undefined", breslow_day_p = if (df > 0) num(pchisq(bd, df, lower.tail = FALSE)) else "undefined", tarone = if (df > 0) num(ta) else "undefined",
    degrees_of_freedom = if (df > 0) int(df) else "undefined", conditional = "", conditional_lower = "", conditional_upper = "", exact_p = "",
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, " metafor ", packageVersion("metafor"), " rma.mh; uniroot; the formulas; small statistics lose digits in R (generators/sites.R)")))
  last <- nrow(rows); for (f in c("statistic", "corrected_statistic", "tarone", "breslow_day")) if (rows[last, f] != "undefined" && as.numeric(rows[last, f]) < 1e-7) rows[last, f] <- ""
  for (f in c("p_value", "corrected_p_value", "breslow_day_p")) if (rows[last, f] != "undefined" && as.numeric(rows[last, f]) < 1e-150) rows[last, f] <- ""
}
rows$id <- paste0("drawn-", seq_len(nrow(rows)))
write("stratified-odds-ratios", rows)

# --- trend ---
rows <- NULL
while (is.null(rows) || nrow(rows) < 60) {
  d <- draw(sample(c(2, 3, 5, 12, 52), 1)); k <- length(d$x)
  if (sum(d$x) == 0 || sum(d$x) == sum(d$n)) next
  s <- if (runif(1) < .5) seq_len(k) else signif(sort(rnorm(k, 100, 5)), 6)
  t <- prop.trend.test(d$x, d$n, s); chi <- suppressWarnings(chisq.test(rbind(d$x, d$n - d$x), correct = FALSE)$statistic)
  # given both margins: (N - 1) times the squared correlation of event and score over all trials
  N <- sum(d$n); mx <- sum(d$n * s) / N; p <- sum(d$x) / N; r2 <- sum((s - mx) * (d$x - d$n * p))^2 / (sum(d$n * (s - mx)^2) * N * p * (1 - p))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", nrow(rows)), events = int(d$x), trials = int(d$n), scores = list_(s), statistic = num(t$statistic), conditional_statistic = num((N - 1) * r2),
    p_value = num(t$p.value), departure = if (k > 2) num(chi - t$statistic) else "",
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, " prop.trend.test and chisq.test (generators/sites.R)")))
  last <- nrow(rows); for (f in c("statistic", "conditional_statistic", "departure")) if (rows[last, f] != "" && as.numeric(rows[last, f]) < 1e-6 * chi) rows[last, f] <- ""
  if (as.numeric(rows[last, "p_value"]) < 1e-150) rows[last, "p_value"] <- ""
}
rows$id <- paste0("drawn-", seq_len(nrow(rows)))
write("proportion-trends", rows)

# --- Poisson limits ---
rows <- NULL
for (x in c(0, 1, 2, 3, 7, 20, 60, 333, 4000, 50000, 1000000)) for (confidence in c(.8, .95, .998)) {
  t <- (1 - confidence) / 2; z <- -qnorm(t)
  for (m in c("exact", "byar")) {
    ends <- if (m == "exact") c(if (x == 0) 0 else qgamma(t, x), qgamma(t, x + 1, lower.tail = FALSE)) else
      c(if (x == 0) 0 else max(0, x * (1 - 1 / (9 * x) - z / (3 * sqrt(x)))^3), (x + 1) * (1 - 1 / (9 * (x + 1)) + z / (3 * sqrt(x + 1)))^3)
    rows <- rbind(rows, data.frame(id = paste0(m, "-", int(x), "-", confidence), method = m, events = int(x), confidence = confidence, lower = num(ends[1]), upper = num(ends[2]),
      tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, " qgamma (generators/sites.R)")))
  }
}
rows <- rows[!(rows$method == "byar" & as.numeric(rows$lower) < 1e-3 & rows$events == "1"), ]
write("poisson-intervals", rows)

# --- direct and indirect standardisation ---
rows <- NULL; indirect <- NULL
for (case in 1:75) {
  k <- sample(c(1, 2, 4, 9, 30), 1); n <- sample(c(3, 40, 900, 20000, 700000), k, TRUE) + sample(0:9, k, TRUE); S <- sample(c(1, 50, 4000, 900000), k, TRUE) + sample(0:9, k, TRUE)
  x <- rbinom(k, n, runif(1)^sample(2:7, 1)); m <- c("fay-feuer", "tiwari", "dobson-exact", "dobson-byar", "normal")[(case - 1) %% 5 + 1]; confidence <- sample(c(.9, .95, .99), 1); t <- (1 - confidence) / 2; z <- -qnorm(t)
  w <- S / sum(S) / n; y <- sum(w * x); v <- sum(w^2 * x); O <- sum(x); wm <- if (m == "fay-feuer") max(w) else mean(w); w2 <- if (m == "fay-feuer") max(w)^2 else mean(w^2)
  count <- if (m == "dobson-exact") c(if (O == 0) 0 else qgamma(t, O), qgamma(1 - t, O + 1)) else c(O * (1 - 1 / (9 * O) - z / (3 * sqrt(O)))^3, (O + 1) * (1 - 1 / (9 * (O + 1)) + z / (3 * sqrt(O + 1)))^3)
  ends <- if (m %in% c("fay-feuer", "tiwari")) c(if (O == 0) 0 else qgamma(t, y^2 / v, scale = v / y), qgamma(t, (y + wm)^2 / (v + w2), scale = (v + w2) / (y + wm), lower.tail = FALSE)) else
    if (O == 0) c(NA, NA) else if (m == "normal") c(max(0, y - z * sqrt(v)), y + z * sqrt(v)) else c(max(0, y + sqrt(v / O) * (count[1] - O)), y + sqrt(v / O) * (count[2] - O))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), strata = paste(paste0(x, "/", n, ":", S), collapse = " "), method = m, confidence = confidence, per = 1, crude = num(O / sum(n)),
    rate = if (is.na(ends[2])) "undefined" else num(y), lower = num(ends[1]), upper = num(ends[2]), tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " qgamma and the formulas of the papers (generators/sites.R)")))
  R <- rbinom(k, S, .02); E <- sum(n * R / S); m <- c("exact", "byar")[case %% 2 + 1]
  ends <- if (m == "exact") as.numeric(poisson.test(O, conf.level = confidence)$conf.int) else c(if (O == 0) 0 else max(0, O * (1 - 1 / (9 * O) - z / (3 * sqrt(O)))^3), (O + 1) * (1 - 1 / (9 * (O + 1)) + z / (3 * sqrt(O + 1)))^3)
  none <- E == 0
  indirect <- rbind(indirect, data.frame(id = paste0("drawn-", case), strata = paste(paste0(x, "/", n, ":", R, "/", S), collapse = " "), method = m, confidence = confidence, per = 1, expected = num(E),
    ratio = if (none) "undefined" else num(O / E), lower = if (none) "undefined" else num(ends[1] / E), upper = if (none) "undefined" else num(ends[2] / E), rate = if (none) "undefined" else num(O / E * sum(R) / sum(S)),
    tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " poisson.test and the formulas (generators/sites.R)")))
}
write("direct-rates", rows); write("indirect-ratios", indirect)
