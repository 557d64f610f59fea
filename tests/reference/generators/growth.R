# Reference values from R for regressions of rates (Poisson with exposure, log-binomial), growth and doubling time, level crossing, interrupted
# series and errors robust to dependence between neighbouring periods. Fits by glm.fit; the Newey-West filling as one product with a band matrix of
# weights; profile limits by root finding on refits; Fieller's limits by root finding on the test of a ratio.
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/growth.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99, warn = -1)
set.seed(20261203)
shown <- function(y, n, X, g) paste(paste0(num(y), "/", num(n), ":", if (ncol(X) == 0) "" else apply(X, 1, function(r) paste(num(r), collapse = ";")), "@", g), collapse = " ")
control <- list(epsilon = 1e-15, maxit = 200)

# One fit with everything that is made of it. u: slope of each row's log-likelihood in its predictor; A: expected information.
fit <- function(...) tryCatch(refit(...), error = function(e) NULL) # none where nothing can be inverted
refit <- function(y, n, M, scale) {
  if (scale == "events") { f <- glm.fit(M, y, family = poisson(), offset = log(n), control = control); m <- f$fitted.values; u <- y - m; w <- m; pearson <- sum((y - m)^2 / m)
    log <- sum(ifelse(y == 0, -m, y * log(m) - m - lgamma(y + 1))); rate <- m / n }
  else if (scale == "odds") { f <- glm.fit(M, cbind(y, n - y), family = binomial(), control = control); p <- f$fitted.values; u <- y - n * p; w <- n * p * (1 - p); pearson <- sum(u^2 / w)
    log <- sum(lchoose_(n, y) + ifelse(y > 0, y * log(p), 0) + ifelse(y < n, (n - y) * log1p(-p), 0)); rate <- p }
  else { f <- tryCatch(glm.fit(M, cbind(y, n - y), family = binomial("log"), start = c(log(sum(y) / sum(n)), rep(0, ncol(M) - 1)), control = control), error = function(e) NULL)
    if (is.null(f) || !f$converged || any(f$fitted.values > 1 - 1e-6)) return(NULL)
    p <- f$fitted.values; u <- (y - n * p) / (1 - p); w <- n * p / (1 - p); pearson <- sum((y - n * p)^2 / (n * p * (1 - p)))
    log <- sum(lchoose_(n, y) + ifelse(y > 0, y * log(p), 0) + ifelse(y < n, (n - y) * log1p(-p), 0)); rate <- p }
  list(b = f$coefficients, u = u, V = solve(t(M) %*% (M * w)), deviance = f$deviance, pearson = pearson, log = log, rate = rate, converged = f$converged, M = M)
}
lchoose_ <- function(n, y) lgamma(n + 1) - lgamma(y + 1) - lgamma(n - y + 1)
hac <- function(f, lag, factor, place, count) {
  S <- matrix(0, count, ncol(f$M)); S[place, ] <- f$M * f$u
  W <- outer(1:count, 1:count, function(i, j) pmax(0, 1 - abs(i - j) / (lag + 1)))
  f$V %*% (t(S) %*% W %*% S) %*% f$V * (if (factor) length(place) / (length(place) - ncol(f$M)) else 1)
}
usual <- function(n) min(n - 1, floor(4 * (n / 100)^(2 / 9)))

# --- regressions of rates ---
for (name in c("poisson", "log-binomial")) {
  rows <- NULL; case <- 0
  while (is.null(rows) || nrow(rows) < 60) {
    case <- case + 1
    k <- sample(c(4, 8, 20, 60), 1); t <- sample(0:3, 1); X <- matrix(0, k, t)
    for (j in seq_len(t)) X[, j] <- if (runif(1) < .5) signif(rnorm(k), 4) else sample(0:1, k, TRUE)
    if (qr(cbind(1, X))$rank < t + 1 || k <= t + 2) next
    g <- sample(0:5, k, TRUE); if (length(unique(g)) < 3) next
    real <- runif(1) < .3; constant <- name == "log-binomial" || runif(1) < .85; if (!constant && t == 0) next
    eta <- as.numeric(X %*% rnorm(t, 0, .4)) + rnorm(k, 0, sample(c(0, .3), 1))
    if (name == "poisson") { n <- signif(exp(rnorm(k, sample(c(0, 3, 8), 1), 1)), 5); y <- rpois(k, n * exp(eta + rnorm(1, 0, 1))); scale <- "events" }
    else { n <- sample(c(5, 40, 500, 20000), k, TRUE) + sample(0:9, k, TRUE); y <- rbinom(k, n, pmin(.97, exp(eta + rnorm(1, -2, .8)))); scale <- "share" }
    if (sum(y) == 0 || (scale == "share" && sum(y) == sum(n))) next
    if (real) { d <- round(runif(1, 1.1, 3), 2); y <- y / d; n <- n / d }
    M <- if (constant) cbind(1, X) else X
    f <- fit(y, n, M, scale); if (is.null(f) || any(!is.finite(f$b)) || max(sqrt(diag(f$V))) > 8 || (scale == "events" && !f$converged && f$deviance > 1e8)) next
    # what is at the end of the search: refuse where the scores are not 0 or a row without events runs away
    if (max(abs(t(M) %*% f$u)) > 1e-5 * (1 + sum(y))) next
    kind <- c("model", "quasi", "cluster-robust")[case %% 3 + 1]
    V <- if (kind == "model") f$V else if (kind == "quasi") f$V * f$pearson / (k - ncol(M)) else { U <- rowsum(M * f$u, g); f$V %*% (t(U) %*% U) %*% f$V * nrow(U) / (nrow(U) - 1) }
    if (any(diag(V) < 1e-14)) next
    null <- if (!constant) NA else if (scale == "events") glm.fit(matrix(1, k, 1), y, family = poisson(), offset = log(n), control = control)$deviance else glm.fit(matrix(1, k, 1), cbind(y, n - y), family = binomial(), control = control)$deviance
    rows <- rbind(rows, data.frame(id = paste0("drawn-", case), rows = shown(y, n, X, g), constant = constant, covariance = kind, coefficients = list_(f$b), standard_errors = list_(sqrt(diag(V))),
      deviance = if (f$deviance > 1e-6) num(f$deviance) else "", null_deviance = num(null), pearson = if (f$pearson > 1e-6) num(f$pearson) else "", log_likelihood = num(f$log), akaike = num(2 * ncol(M) - 2 * f$log), degrees_of_freedom = k - ncol(M),
      tolerance = "relative:2e-7", kind = "independent", source = paste0(tool, " glm.fit (generators/growth.R)")))
  }
  write(if (name == "poisson") "poisson-rates" else name, rows)
}

# --- errors robust to dependence between neighbouring periods ---
rows <- NULL; case <- 0
while (is.null(rows) || nrow(rows) < 64) {
  case <- case + 1; model <- c("least-squares", "odds", "events", "share")[case %% 4 + 1]
  k <- sample(c(6, 12, 40, 120), 1); t <- sample(1:3, 1); X <- cbind((1:k) / 10, if (t > 1) as.numeric(1:k > k / 2), if (t > 2) signif(sin(1:k / 3), 5))
  e <- as.numeric(arima.sim(list(ar = .5), k)) * .3; n <- sample(c(20, 300, 5000), 1) + sample(0:30, k, TRUE); lag <- sample(c(0, 1, 3, 8), 1); if (lag > k - 1) next
  factor <- runif(1) < .4; empty <- if (model != "least-squares" && runif(1) < .3) sample(k, 1) else NULL
  M <- cbind(1, X); place <- setdiff(1:k, empty)
  if (model == "least-squares") {
    y <- round(5 + .3 * X[, 1] + e, 4); q <- lm.fit(M, y); f <- list(b = q$coefficients, u = q$residuals, V = solve(t(M) %*% M), M = M); own <- sqrt(diag(f$V) * sum(q$residuals^2) / (k - ncol(M)))
    text <- paste(paste0(num(y), ":", apply(X, 1, function(r) paste(num(r), collapse = ";"))), collapse = " ")
  } else {
    y <- if (model == "events") rpois(k, n * exp(-2 + e)) else rbinom(k, n, plogis(-2 + e)); n[empty] <- 0; y[empty] <- 0
    f <- fit(y[place], n[place], M[place, ], model); if (is.null(f) || max(abs(t(f$M) %*% f$u)) > 1e-6 * (1 + sum(y)) || max(diag(f$V)) > 30) next
    own <- sqrt(diag(f$V)); text <- shown(y, n, X, rep(0, k))
  }
  if (length(place) <= ncol(M)) next
  V <- hac(f, lag, factor, place, k); if (any(diag(V) < 1e-14)) next
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), model = model, rows = text, lag = lag, factor = factor, coefficients = list_(f$b), model_errors = list_(own), standard_errors = list_(sqrt(diag(V))),
    tolerance = "relative:5e-7", kind = "independent", source = paste0(tool, " own matrix product (generators/growth.R)")))
}
write("newey-west", rows)

# --- autocorrelation ---
rows <- NULL
for (case in 1:54) {
  k <- sample(c(3, 8, 30, 100), 1); e <- signif(as.numeric(arima.sim(list(ar = runif(1, -.8, .8)), k)) + sample(c(0, 2), 1), 6); lags <- min(k - 1, sample(c(1, 2, 5, 12), 1)); fitted <- sample(0:max(0, min(2, lags - 1)), 1)
  test <- Box.test(e, lags, "Ljung-Box", fitdf = fitted)
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), residuals = list_(e), durbin_watson = num(sum(diff(e)^2) / sum(e^2)), lags = lags, fitted = fitted, ljung_box = num(as.numeric(test$statistic)), p_value = num(pchisq(as.numeric(test$statistic), lags - fitted, lower.tail = FALSE)),
    tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, " Box.test; diff (generators/growth.R)")))
}
write("autocorrelations", rows)

# --- growth ---
points <- function(time, y, n) paste(paste0(num(y), "/", num(n), ":", num(time)), collapse = " ")
rows <- NULL; case <- 0
while (is.null(rows) || nrow(rows) < 130) {
  case <- case + 1; scale <- c("odds", "share", "events")[case %% 3 + 1]; limits <- sample(c("plain", "quasi", "robust", "profile"), 1)
  k <- sample(c(2, 3, 5, 12, 30, 100), 1); time <- if (runif(1) < .6) 0:(k - 1) + sample(c(0, 2900), 1) else sort(round(runif(k, -5, 60), 2)); if (any(duplicated(time))) next
  n <- sample(c(30, 300, 8000), 1) + sample(0:20, k, TRUE); empty <- if (k > 5 && runif(1) < .3) sample(k, 1) else NULL
  centre <- (time - mean(time)) / (max(time) - min(time)); eta <- rnorm(1, -2.5, .8) + rnorm(1, 0, 1.2) * centre + rnorm(k, 0, sample(c(0, .4), 1))
  y <- if (scale == "events") rpois(k, n * exp(eta)) else rbinom(k, n, if (scale == "odds") plogis(eta) else pmin(.95, exp(eta))); y[empty] <- 0; n[empty] <- 0
  if (runif(1) < .3) { d <- round(runif(1, 1.1, 3), 2); y <- y / d; n <- n / d }
  use <- n > 0; tt <- time[use]; yy <- y[use]; nn <- n[use]; if (sum(yy > 0) < 2) next
  o <- (tt[1] + tt[length(tt)]) / 2; M <- cbind(1, tt - o); f <- fit(yy, nn, M, scale); if (is.null(f) || max(abs(t(M) %*% f$u)) > 1e-6 * (1 + sum(yy))) next
  if (sqrt(f$V[2, 2]) * (max(tt) - min(tt)) > 6) next
  df <- length(yy) - 2; phi <- if (df > 0) f$pearson / df else NA; lag <- usual(k); factor <- runif(1) < .5; student <- runif(1) < .4; least <- sample(0:1, 1); confidence <- sample(c(.9, .95, .99), 1)
  if (limits %in% c("quasi", "robust") && df < 1) next
  r <- f$b[2]; q <- qnorm((1 + confidence) / 2); if (limits %in% c("quasi", "robust") && student) q <- qt((1 + confidence) / 2, df)
  v <- switch(limits, plain = f$V[2, 2], quasi = f$V[2, 2] * max(least, phi), robust = hac(f, lag, factor, which(use), k)[2, 2], profile = f$V[2, 2])
  if (v < 1e-16) next
  if (limits == "profile") {
    at <- function(s) { # largest log-likelihood at a slope
      L <- function(a) { e <- a + s * (tt - o); if (scale == "events") sum(ifelse(yy == 0, 0, yy * (log(nn) + e)) - nn * exp(e)) else if (scale == "odds") sum(yy * plogis(e, log.p = TRUE) + (nn - yy) * plogis(-e, log.p = TRUE)) else if (any(e >= 0)) -1e300 else sum(yy * e + (nn - yy) * log1p(-exp(e))) }
      top <- if (scale == "share") -max(s * (tt - o)) - 1e-12 else 30
      best <- optimize(L, c(f$b[1] - 30, min(top, f$b[1] + 30)), maximum = TRUE, tol = 1e-11); d <- best$maximum
      for (i in 1:5) { h <- 1e-4; g1 <- (L(d + h) - L(d - h)) / (2 * h); g2 <- (L(d + h) - 2 * L(d) + L(d - h)) / h^2; if (!is.finite(g1 / g2) || g2 >= 0 || abs(g1 / g2) > 1e-3) break; d <- d - g1 / g2 }
      max(L(d), best$objective) }
    top <- at(r); cut <- function(s) top - at(s) - q^2 / 2; span <- q * sqrt(v)
    lower <- tryCatch(uniroot(cut, c(r - 4 * span, r), tol = 1e-13)$root, error = function(e) NA); upper <- tryCatch(uniroot(cut, c(r, r + 4 * span), tol = 1e-13)$root, error = function(e) NA)
    if (is.na(lower) || is.na(upper)) next
  } else { lower <- r - q * sqrt(v); upper <- r + q * sqrt(v) }
  if (min(abs(c(r, lower, upper))) * (max(tt) - min(tt)) < 1e-3) next
  turned <- log(2) / c(r, lower, upper)
  if (r < 0) turned <- -turned[c(1, 3, 2)]
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), points = points(time, y, n), scale = scale, limits = limits, lag = if (limits == "robust") lag else "", factor = factor, student = student, least = least, confidence = confidence,
    growth = num(r), lower = num(lower), upper = num(upper), standard_error = num(sqrt(v)), change = num(expm1(r)), kind_of_time = if (r > 0) "doubling" else "halving", time = num(turned[1]),
    time_lower = if (turned[3] > 0) num(turned[3]) else num(turned[3]), time_upper = if (turned[2] > 0) num(turned[2]) else "undefined", deviance = if (f$deviance > 1e-6) num(f$deviance) else "", dispersion = num(phi), akaike = "",
    tolerance = if (limits == "profile") "relative:2e-6" else "relative:5e-7", kind = "independent", source = paste0(tool, " glm.fit", if (limits == "profile") " and uniroot on refits" else "", " (generators/growth.R)")))
}
write("growth", rows)

# --- level crossing ---
rows <- NULL; case <- 0
while (is.null(rows) || nrow(rows) < 60) {
  case <- case + 1; a <- signif(rnorm(1, -2, 1), 8); b <- signif(rnorm(1, 0, .3), 8); va <- signif(runif(1, .01, .3), 6); vb <- signif(runif(1, 1e-5, .01), 6); ab <- signif(runif(1, -.95, .95) * sqrt(va * vb), 6)
  origin <- sample(c(0, 6, 2900.5), 1); level <- signif(rnorm(1, -1, 1.5), 6); confidence <- sample(c(.8, .95, .99), 1); z <- qnorm((1 + confidence) / 2)
  x <- (level - a) / b; se <- sqrt(va + 2 * x * ab + x^2 * vb) / abs(b)
  if (abs(x) > 200) next
  test <- function(t) (a + b * t - level)^2 - z^2 * (va + 2 * t * ab + t^2 * vb)
  closed <- b^2 > z^2 * vb * 1.02
  if (!closed && b^2 > z^2 * vb * .98) next
  ends <- if (closed) c(uniroot(test, c(x - 1e5, x), tol = 1e-13, maxiter = 5000)$root, uniroot(test, c(x, x + 1e5), tol = 1e-13, maxiter = 5000)$root) else c(NA, NA)
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), origin = num(origin), intercept = num(a), slope = num(b), intercept_variance = num(va), covariance = num(ab), slope_variance = num(vb), level = num(level), confidence = confidence,
    time = num(origin + x), standard_error = num(se), lower = num(origin + x - z * se), upper = num(origin + x + z * se), fieller_lower = num(origin + ends[1]), fieller_upper = num(origin + ends[2]),
    tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " uniroot on the test of the ratio (generators/growth.R)")))
}
write("level-crossings", rows)

# --- interrupted series ---
rows <- NULL; case <- 0
while (is.null(rows) || nrow(rows) < 60) {
  case <- case + 1; scale <- c("odds", "events", "share")[case %% 3 + 1]; limits <- sample(c("plain", "quasi", "robust"), 1); k <- sample(c(10, 24, 60, 150), 1); time <- 1:k + sample(c(0, 400), 1)
  m <- sample(1:2, 1); at <- sort(sample(time[3:(k - 3)], m)); if (m == 2 && at[2] - at[1] < 4) next
  level <- runif(m) < .8; slope <- runif(m) < .6; if (any(!level & !slope)) next
  shift <- sample(c(0, 1), m, TRUE); pairs <- if (k > 20) sample(0:2, 1) else 0; season <- sample(c(12, 52.18), 1); trend <- runif(1) < .85; if (!trend && any(slope)) next
  n <- sample(c(80, 600, 9000), 1) + sample(0:50, k, TRUE); if (runif(1) < .25) n[sample(k, 1)] <- 0
  o <- (min(time[n > 0]) + max(time[n > 0])) / 2
  build <- function(t) { c(1, if (trend) t - o, if (pairs > 0) unlist(lapply(1:pairs, function(p) c(sin(2 * pi * p * t / season), cos(2 * pi * p * t / season)))),
    unlist(lapply(1:m, function(i) c(if (level[i]) as.numeric(t >= at[i]), if (slope[i]) if (t >= at[i]) t - (at[i] - shift[i]) else 0)))) }
  M <- t(sapply(time, build)); own <- ncol(M) - sum(level) - sum(slope); if (qr(M[n > 0, ])$rank < ncol(M) || k <= ncol(M) + 3) next
  eta <- -2 + .02 * (time - o) * 10 / k + as.numeric(time >= at[1]) * rnorm(1, 0, .5) + as.numeric(arima.sim(list(ar = .4), k)) * sample(c(.02, .2), 1)
  y <- if (scale == "events") rpois(k, n * exp(eta)) else rbinom(k, n, plogis(eta)); use <- n > 0
  f <- fit(y[use], n[use], M[use, ], scale); if (is.null(f) || max(abs(t(f$M) %*% f$u)) > 1e-6 * (1 + sum(y)) || max(diag(f$V)) > 30) next
  df <- sum(use) - ncol(M); phi <- f$pearson / df; lag <- usual(k)
  V <- switch(limits, plain = f$V, quasi = f$V * phi, robust = hac(f, lag, FALSE, which(use), k)); if (any(diag(V) < 1e-14)) next
  z <- qnorm(.975); combo <- function(w) { v <- sum(w * f$b); e <- sqrt(max(0, as.numeric(t(w) %*% V %*% w))); c(v, v - z * e, v + z * e) }
  unit <- function(j) replace(numeric(ncol(M)), j, 1)
  # places of the first change
  p <- own; pl <- if (level[1]) { p <- p + 1; p } else NA; ps <- if (slope[1]) { p <- p + 1; p } else NA
  ratio <- if (level[1]) exp(combo(unit(pl))) else NULL
  before <- if (trend) combo(unit(2)) else NULL; after <- if (trend) combo(unit(2) + (if (slope[1]) unit(ps) else 0)) else NULL
  back <- if (scale == "odds") plogis else if (scale == "share") function(e) pmin(1, exp(e)) else exp # a share above 1 is shown as 1
  last <- M[k, ]; free <- last; free[(own + 1):ncol(M)] <- 0
  p_ <- f$rate; yy <- y[use]; nn <- n[use]
  part <- function(a, b) ifelse(a == 0, 0, a * log(a / b)); dev <- if (scale == "events") 2 * (part(yy, nn * p_) - (yy - nn * p_)) else 2 * (part(yy, nn * p_) + part(nn - yy, nn * (1 - p_)))
  e <- sign(yy - nn * p_) * sqrt(pmax(0, dev))
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), points = points(time, y, n), changes = paste(paste0(num(at), ":", ifelse(level, "level", ""), ifelse(slope, "slope", ""), ":", num(at - shift)), collapse = " "), scale = scale, limits = limits,
    trend = trend, pairs = pairs, season = season, coefficients = list_(f$b), standard_errors = list_(sqrt(diag(V))), ratio = if (is.null(ratio)) "" else list_(ratio), before = if (is.null(before)) "" else list_(before), after = if (is.null(after)) "" else list_(after),
    last_fitted = list_(back(combo(last))), last_unchanged = list_(back(combo(free))), last_ratio = list_(exp(combo(last - free))), deviance = num(f$deviance), akaike = num(2 * ncol(M) - 2 * f$log), dispersion = num(phi), durbin_watson = num(sum(diff(e)^2) / sum(e^2)),
    tolerance = "relative:2e-6", kind = "independent", source = paste0(tool, " glm.fit (generators/growth.R)")))
}
write("interrupted-series", rows)
