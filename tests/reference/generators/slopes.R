# Reference values from R for broken lines of the logit, their profile limits and mean growth, and for weekdays within weeks. Written apart from the library:
# places by glm over all sets of periods, then by optim/optimize of the profile deviance between periods; errors from the derivative of the whole
# likelihood by numeric differences of the mean; weekdays by enumeration of all tables of a week, or by glm with a factor of the week.
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/slopes.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)
set.seed(20261125)

fitted_at <- function(t, y, n, psi) {
  X <- cbind(1, t, sapply(psi, function(p) pmax(t - p, 0)))
  f <- suppressWarnings(glm.fit(X, cbind(y, n - y), family = binomial(), control = list(epsilon = 1e-13, maxit = 50)))
  list(beta = f$coefficients, dev = f$deviance, mu = f$fitted.values, ok = all(is.finite(f$coefficients)) && is.finite(f$deviance)) # rounding may keep glm from calling it converged
}
allowed <- function(t, y, n, psi, least) {
  b <- c(-Inf, psi, Inf)
  # strictly inside: without the period a change is on, or the two it is between
  touched <- unlist(lapply(psi, function(p) if (p %in% t) p else c(max(t[t < p], -Inf), min(t[t > p], Inf))))
  all(diff(b) > 0) && all(sapply(seq_len(length(b) - 1), function(s) { i <- t >= b[s] & t <= b[s + 1]; o <- t > b[s] & t < b[s + 1] & !(t %in% touched)
    length(unique(t[i])) >= least && sum(y[o]) > 0 && sum(n[o] - y[o]) > 0 }))
}
deviance_at <- function(t, y, n, psi, least) { if (is.unsorted(psi) || !allowed(t, y, n, psi, least)) return(Inf); f <- fitted_at(t, y, n, psi); if (f$ok) f$dev else Inf }

# The least deviance: a grid of three places between each two periods (one for pairs, none for three), all sets; then the best of several neighbourhoods by coordinate-wise optimize and Nelder-Mead.
best_places <- function(t, y, n, K, least, fixed = NULL, at = NULL) {
  u <- sort(unique(t)); grid <- sort(unique(c(u, if (K < 3) unlist(lapply(seq_len(length(u) - 1), function(i) u[i] + (if (K == 1) (1:3) / 4 else 1 / 2) * (u[i + 1] - u[i]))))))
  free <- if (is.null(fixed)) seq_len(K) else seq_len(K)[-fixed]
  sets <- if (length(free) == 0) matrix(nrow = 0, ncol = 1) else combn(grid, length(free))
  full <- function(x) { p <- numeric(K); p[free] <- x; if (!is.null(fixed)) p[fixed] <- at; p }
  if (length(free) == 0) return(list(psi = at, dev = deviance_at(t, y, n, at, least)))
  dev <- apply(sets, 2, function(x) deviance_at(t, y, n, full(x), least))
  found <- list(dev = Inf)
  place <- matrix(apply(sets, 2, findInterval, u), nrow = length(free)); starts <- integer(0)
  for (s in order(dev)[seq_len(sum(is.finite(dev)))]) { if (length(starts) == (if (is.null(fixed)) 8 else 3)) break
    if (!any(vapply(starts, function(o) all(abs(place[, o] - place[, s]) <= 1), NA))) starts <- c(starts, s) }
  for (s in starts) {
    x <- sets[, s]; d <- dev[s]
    for (round in seq_len(if (is.null(fixed)) 40 else 6)) { before <- d
      for (j in seq_along(x)) {
        cell <- sort(unique(c(u[order(abs(u - x[j]))[1:min(4, length(u))]], x[j])))
        for (i in seq_len(length(cell) - 1)) { o <- optimize(function(z) deviance_at(t, y, n, full(replace(x, j, z)), least), cell[i + 0:1], tol = 1e-8); if (is.finite(o$objective) && o$objective < d) { x[j] <- o$minimum; d <- o$objective } }
        for (z in cell) { e <- deviance_at(t, y, n, full(replace(x, j, z)), least); if (e < d - 1e-11) { x[j] <- z; d <- e } } }
      if (is.null(fixed) && length(x) > 1) { o <- optim(x, function(z) { e <- deviance_at(t, y, n, full(z), least); if (is.finite(e)) e else 1e9 }, control = list(reltol = 1e-13, maxit = 800)); if (o$value < d) { x <- o$par; d <- o$value } } # along a ridge
      if (before - d < 1e-9) break }
    if (d < found$dev) found <- list(psi = full(x), dev = d) }
  found
}
# Between periods the maximum solves smooth equations: Newton on all of them, the derivative by differences.
polish <- function(t, y, n, psi) {
  free <- which(!(psi %in% t)); f <- fitted_at(t, y, n, psi); K <- length(psi); theta <- c(f$beta, psi)
  eta <- function(q) { e <- q[1] + q[2] * t; for (k in seq_len(K)) e <- e + q[2 + k] * pmax(t - q[2 + K + k], 0); e }
  J <- function(q) cbind(1, t, sapply(seq_len(K), function(k) pmax(t - q[2 + K + k], 0)), sapply(seq_len(K), function(k) -q[2 + k] * (t > q[2 + K + k])))
  use <- c(seq_len(2 + K), 2 + K + free)
  for (step in 1:30) { p <- plogis(eta(theta)); M <- J(theta)[, use, drop = FALSE]; g <- colSums(M * (y - n * p))
    H <- t(M) %*% (M * (n * p * (1 - p))); for (k in free) { a <- which(use == 2 + k); b <- which(use == 2 + K + k); s <- sum((y - n * p)[t > theta[2 + K + k]]); H[a, b] <- H[a, b] + s; H[b, a] <- H[b, a] + s }
    change <- as.numeric(solve(H, g)); theta[use] <- theta[use] + change; if (max(abs(change)) < 1e-13) break }
  theta
}
covariance <- function(t, n, theta, K) { # of coefficients and places, information of the mean
  eta <- theta[1] + theta[2] * t; for (k in seq_len(K)) eta <- eta + theta[2 + k] * pmax(t - theta[2 + K + k], 0); p <- plogis(eta)
  M <- cbind(1, t, if (K) sapply(seq_len(K), function(k) pmax(t - theta[2 + K + k], 0)), if (K) sapply(seq_len(K), function(k) -theta[2 + k] * ((t > theta[2 + K + k]) + (t == theta[2 + K + k]) / 2)))
  solve(t(M) %*% (M * (n * p * (1 - p)))) }

rows <- NULL; profile <- NULL; growth <- NULL
shown <- function(t, y, n) paste(paste0(num(t), ":", num(y), "/", num(n)), collapse = " ")
case <- 0
while (case < 96) {
  K <- c(0, 1, 1, 2, 2, 3)[case %% 6 + 1]
  m <- if (K == 3) sample(16:20, 1) else if (K == 2) sample(14:30, 1) else sample(c(10, 25, 60), 1); least <- sample(c(2, 3, 4), 1); if (K == 3) least <- 3
  t <- switch(sample(3, 1), seq_len(m), 738000 + 7 * seq_len(m), sort(round(runif(m, 0, 10), 2))); if (any(duplicated(t))) next
  span <- t[m] - t[1]; true <- t[1] + span * sort(runif(K, .1, .9)); slopes <- rnorm(K + 1, 0, 5) / span
  eta <- rnorm(1, -2, 1) + slopes[1] * (t - t[1]); for (k in seq_len(K)) eta <- eta + (slopes[k + 1] - slopes[k]) * pmax(t - true[k], 0); eta <- pmin(pmax(eta, -6), 4)
  n <- sample(c(60, 400, 3000), 1) + sample(0:40, m, TRUE); extra <- sample(c(0, .3), 1); y <- rbinom(m, n, plogis(eta + rnorm(m, 0, extra)))
  if (runif(1) < .3) { d <- 1 + runif(1); y <- round(y / d, 4); n <- round(n / d, 4); y <- pmin(y, n) }
  if (m <= 2 + 2 * K) next
  z <- (t - t[1]) / span # a scale on which glm is well conditioned
  if (K == 0) { X <- cbind(1, z); f <- suppressWarnings(glm.fit(X, cbind(y, n - y), family = binomial(), control = list(epsilon = 1e-15, maxit = 100))); theta <- f$coefficients } else {
    b <- best_places(z, y, n, K, least); if (!is.finite(b$dev)) next
    b$psi <- vapply(b$psi, function(p) { i <- which.min(abs(z - p)); if (abs(z[i] - p) < 1e-7) z[i] else p }, 0)
    if (!allowed(z, y, n, b$psi, least)) next # the best place is the edge of what is allowed
    theta <- tryCatch(polish(z, y, n, b$psi), error = function(e) NULL); if (is.null(theta) || any(!is.finite(theta))) next; if (max(abs(theta[2 + K + seq_len(K)] - b$psi)) > 1e-2 || any(abs(theta[2 + seq_len(K)]) < .3)) next }
  scale <- sample(c("binomial", "pearson", "pearson-at-least-one"), 1)
  eta <- theta[1] + theta[2] * z; for (k in seq_len(K)) eta <- eta + theta[2 + k] * pmax(z - theta[2 + K + k], 0); p <- plogis(eta)
  if (any(y == 0 & n * p < 1e-4)) next
  pearson <- sum((y - n * p)^2 / (n * p * (1 - p))); df <- m - 2 - 2 * K; phi <- switch(scale, binomial = 1, pearson = pearson / df, max(1, pearson / df))
  V <- tryCatch(covariance(z, n, theta, K), error = function(e) NULL); if (is.null(V)) next
  V <- V * phi; critical <- if (scale == "binomial") qnorm(.975) else qt(.975, df)
  psi <- theta[2 + K + seq_len(K)]; beta <- cumsum(theta[2:(2 + K)]); C <- sapply(seq_len(K + 1), function(s) c(0, rep(1, s), rep(0, K + 1 - s), rep(0, K))); se <- sqrt(diag(t(C) %*% V %*% C))
  dev <- 2 * sum(ifelse(y > 0, y * log(y / (n * p)), 0) + ifelse(n > y, (n - y) * log((n - y) / (n * (1 - p))), 0))
  logc <- lgamma(n + 1) - lgamma(y + 1) - lgamma(n - y + 1); ll <- sum(logc + y * log(p) + (n - y) * log1p(-p))
  case <- case + 1; id <- paste0("drawn-", case); src <- paste0(tool, " glm.fit (generators/slopes.R)")
  rows <- rbind(rows, data.frame(id = id, counts = shown(t, y, n), changes = K, least_periods = least, scale = scale, places = list_(t[1] + span * psi), place_errors = list_(span * sqrt(diag(V))[2 + K + seq_len(K)]),
    differences = list_(theta[2 + seq_len(K)] / span), difference_errors = list_(sqrt(diag(V))[2 + seq_len(K)] / span), slopes = list_(beta / span), slope_errors = list_(se / span), last_slope = "", intercept = "",
    deviance = num(dev), pearson = num(pearson), log_likelihood = num(ll), akaike = num(-2 * ll + 4 + 4 * K), tolerance = "relative:2e-6", kind = "independent", source = src))
  # mean growth over a span inside, errors by the whole covariance
  q <- sort(t[1] + span * runif(2, .05, .95)); zq <- (q - t[1]) / span; at <- function(x) c(1, x, if (K) pmax(x - psi, 0), if (K) -theta[2 + seq_len(K)] * (x > psi)); gr <- (at(zq[2]) - at(zq[1])) / diff(q)
  edges <- c(-Inf, psi, Inf); share <- sapply(seq_len(K + 1), function(s) max(0, min(zq[2], edges[s + 1]) - max(zq[1], edges[s]))) / diff(zq)
  g <- sum(share * beta) / span; ge <- sqrt(as.numeric(t(gr) %*% V %*% gr))
  growth <- rbind(growth, data.frame(id = id, counts = shown(t, y, n), changes = K, least_periods = least, scale = scale, from = num(q[1]), to = num(q[2]), slope = num(g), standard_error = num(ge),
    lower = num(g - critical * ge), upper = num(g + critical * ge), tolerance = "relative:2e-5", kind = "independent", source = src))
  # profile limits
  if (K == 1 || K == 2 && m <= 18 && sum(profile$changes == 2) < 12) {
    target <- dev + phi * critical^2; low <- high <- rep(NA, K); bad <- FALSE
    for (k in seq_len(K)) {
      u <- sort(unique(z)); excess <- function(x) best_places(z, y, n, K, least, k, x)$dev - target
      fine <- sort(unique(c(u, psi[k]))); e <- sapply(fine, excess); inside <- which(e <= 0 & is.finite(e)); finite <- which(is.finite(e))
      # one valley only: else what counts as the limit is a matter of definition
      if (length(inside) == 0 || any(diff(inside) != 1)) { bad <- TRUE; break }
      if (min(inside) > min(finite)) low[k] <- uniroot(excess, fine[min(inside) - 1:0], tol = 1e-9)$root
      if (max(inside) < max(finite)) high[k] <- uniroot(excess, fine[max(inside) + 0:1], tol = 1e-9)$root
    }
    if (!bad) profile <- rbind(profile, data.frame(id = id, counts = shown(t, y, n), changes = K, least_periods = least, scale = scale, lower = paste(ifelse(is.na(low), "none", num(t[1] + span * low)), collapse = " "),
      upper = paste(ifelse(is.na(high), "none", num(t[1] + span * high)), collapse = " "), unit = num(span), tolerance = "absolute:1e-5", kind = "independent", source = src))
  }
}
write("slope-changes", rows); write("mean-growth", growth); write("change-limits", profile)
