# Reference values from R for logistic regression with and without a random intercept, and for ranks. The marginal likelihood is summed over a
# fixed fine lattice of the effect (no adaptive quadrature), Laplace's approximation by root finding and optim.
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/regression.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)
set.seed(20261127)
shown <- function(y, n, X, g) paste(paste0(y, "/", n, ":", if (ncol(X) == 0) "" else apply(X, 1, function(r) paste(num(r), collapse = ";")), "@", g), collapse = " ")

# --- logistic regression ---
rows <- NULL
add <- function(id, y, n, X, g, constant, kind, tolerance = "relative:1e-7") {
  M <- if (constant) cbind(1, X) else X
  fit <- suppressWarnings(glm.fit(M, cbind(y, n - y), family = binomial(), control = list(epsilon = 1e-15, maxit = 100)))
  p <- fit$fitted.values; bread <- solve(t(M) %*% (M * (n * p * (1 - p)))); pearson <- sum((y - n * p)^2 / (n * p * (1 - p)))
  V <- if (kind == "binomial") bread else if (kind == "quasi-binomial") bread * pearson / (length(y) - ncol(M)) else {
    U <- rowsum(M * (y - n * p), g); G <- nrow(U); bread %*% (t(U) %*% U) %*% bread * G / (G - 1) }
  if (any(diag(V) < 1e-12)) return(invisible()) # a group fitted exactly: its robust error is 0 but for rounding
  rows <<- rbind(rows, data.frame(id = id, rows = shown(y, n, X, g), constant = constant, covariance = kind, coefficients = list_(fit$coefficients), standard_errors = list_(sqrt(diag(V))),
    deviance = if (fit$deviance > 1e-6) num(fit$deviance) else "", pearson = if (pearson > 1e-6) num(pearson) else "", log_likelihood = num(sum(dbinom(y, n, p, log = TRUE))), degrees_of_freedom = length(y) - ncol(M),
    tolerance = tolerance, kind = "independent", source = paste0(tool, " glm.fit (generators/regression.R)")))
}
for (case in 1:75) repeat {
  k <- sample(c(4, 8, 20, 60), 1); t <- sample(0:3, 1); X <- matrix(0, k, t)
  for (j in seq_len(t)) X[, j] <- if (runif(1) < .5) signif(rnorm(k), 4) else sample(0:1, k, TRUE)
  n <- sample(c(5, 40, 500, 20000), k, TRUE) + sample(0:9, k, TRUE); eta <- rnorm(1, -2, 1) + as.numeric(X %*% rnorm(t, 0, .7)); y <- rbinom(k, n, plogis(eta + rnorm(k, 0, sample(c(0, .4), 1)))); g <- sample(0:5, k, TRUE)
  kind <- c("binomial", "quasi-binomial", "cluster-robust")[case %% 3 + 1]
  if (qr(cbind(1, X))$rank < t + 1 || k <= t + 2 || length(unique(g)) < 2 || any(y == 0) || any(y == n)) next
  add(paste0("drawn-", case), y, n, X, g, TRUE, kind); break
}
d <- infert; add("infert", d$case, rep(1, nrow(d)), cbind(d$spontaneous, d$induced), rep(0, nrow(d)), TRUE, "binomial")
u <- as.data.frame(UCBAdmissions); y <- u$Freq[u$Admit == "Admitted"]; n <- y + u$Freq[u$Admit == "Rejected"]; s <- u[u$Admit == "Admitted", ]
add("ucb-admissions", y, n, cbind(as.numeric(s$Gender == "Female"), sapply(LETTERS[2:6], function(l) as.numeric(s$Dept == l))), rep(0, 12), TRUE, "binomial")
write("logistic", rows)

# --- random intercept ---
half <- 9; lattice <- seq(-half, half, length.out = 1201); base <- dnorm(lattice, log = TRUE) + log(lattice[2] - lattice[1])
parts <- function(theta, d) { # for each group the log integrand over the lattice
  s <- exp(theta[length(theta)]); eta <- outer(as.numeric(d$M %*% theta[-length(theta)]), s * lattice, `+`)
  rowsum(dbinom(d$y, d$n, plogis(eta), log = TRUE), d$g) + rep(base, each = length(unique(d$g)))
}
logsum <- function(m) { top <- apply(m, 1, max); top + log(rowSums(exp(m - top))) }
marginal <- function(theta, d) sum(logsum(parts(theta, d)))
slope <- function(theta, d) {
  m <- parts(theta, d); w <- exp(m - logsum(m)); s <- exp(theta[length(theta)]); P <- plogis(outer(as.numeric(d$M %*% theta[-length(theta)]), s * lattice, `+`))
  W <- w[match(d$g, sort(unique(d$g))), , drop = FALSE]; r <- (d$y - d$n * P) * W
  c(as.numeric(t(d$M) %*% rowSums(r)), sum(r %*% (s * lattice)))
}
modes <- function(theta, d) { s <- exp(theta[length(theta)]); e <- as.numeric(d$M %*% theta[-length(theta)])
  sapply(sort(unique(d$g)), function(g) { i <- d$g == g; uniroot(function(u) s * sum(d$y[i] - d$n[i] * plogis(e[i] + s * u)) - u, c(-30, 30), tol = 1e-14)$root }) }
laplace <- function(theta, d) { s <- exp(theta[length(theta)]); u <- modes(theta, d); e <- as.numeric(d$M %*% theta[-length(theta)]) + s * u[match(d$g, sort(unique(d$g)))]; p <- plogis(e)
  sum(dbinom(d$y, d$n, p, log = TRUE)) - sum(u^2) / 2 - sum(log(1 + s^2 * rowsum(d$n * p * (1 - p), d$g))) / 2 }
gradient <- function(f, x) sapply(seq_along(x), function(j) { h <- 1e-3; e <- replace(0 * x, j, h); (8 * (f(x + e) - f(x - e)) - (f(x + 2 * e) - f(x - 2 * e))) / (12 * h) })
polish <- function(theta, gr) { H <- NULL
  for (step in 1:8) { H <- sapply(seq_along(theta), function(j) { e <- replace(0 * theta, j, 1e-4); (gr(theta + e) - gr(theta - e)) / 2e-4 }); H <- (H + t(H)) / 2; change <- solve(H, gr(theta)); theta <- theta - change; if (max(abs(change)) < 1e-11) break }
  list(theta = theta, V = solve(-H), settled = max(abs(change)) < 1e-7) }
rows <- NULL; rates <- NULL; case <- 0
while (is.null(rows) || nrow(rows) < 64) {
  quadrature <- is.null(rows) || nrow(rows) < 40
  G <- sample(c(2, 5, 12, 25), 1); per <- sample(1:4, 1); g <- rep(0:(G - 1), each = per); t <- sample(0:2, 1); k <- G * per; if (k <= t + 2) next
  X <- matrix(0, k, t); for (j in seq_len(t)) X[, j] <- if (j == 1) as.numeric(rep(seq_len(per), G) > per / 2) else signif(rnorm(k), 3)
  if (t > 0 && qr(cbind(1, X))$rank < t + 1) next
  n <- sample(c(3, 20, 150), k, TRUE) + sample(0:9, k, TRUE); b <- rnorm(G, 0, sample(c(.4, .8, 1.5), 1)); y <- rbinom(k, n, plogis(rnorm(1, -2, .7) + as.numeric(X %*% rnorm(t, 0, .5)) + b[g + 1]))
  if (sum(y) < 4 || any(tapply(y, g, sum) == 0) && runif(1) < .6) next
  d <- list(y = y, n = n, M = cbind(1, X), g = g)
  start <- c(suppressWarnings(glm.fit(d$M, cbind(y, n - y), family = binomial()))$coefficients, log(.7))
  f <- if (quadrature) function(q) marginal(q, d) else function(q) laplace(q, d)
  gr <- if (quadrature) function(q) slope(q, d) else function(q) gradient(f, q)
  best <- tryCatch(optim(start, function(q) -f(q), function(q) -gr(q), method = "BFGS", control = list(reltol = 1e-13, maxit = 500)), error = function(e) NULL)
  if (is.null(best) || best$par[t + 2] < log(.15) || best$par[t + 2] > log(4)) next
  fit <- tryCatch(polish(best$par, gr), error = function(e) NULL)
  if (is.null(fit) || !fit$settled || any(diag(fit$V) <= 0)) next
  case <- case + 1; theta <- fit$theta; s <- exp(theta[t + 2]); mode <- s * modes(theta, d); at <- match(g, 0:(G - 1))
  if (quadrature) { m <- parts(theta, d); w <- exp(m - logsum(m)); mean <- as.numeric(w %*% (s * lattice)); sd <- sqrt(as.numeric(w %*% (s * lattice)^2) - mean^2) } else {
    p <- plogis(as.numeric(d$M %*% theta[1:(t + 1)]) + mode[at]); mean <- mode; sd <- s / sqrt(1 + s^2 * as.numeric(rowsum(n * p * (1 - p), g))) }
  rows <- rbind(rows, data.frame(id = paste0(if (quadrature) "quadrature-" else "laplace-", case), rows = shown(y, n, X, g), nodes = if (quadrature) 40 else 1, coefficients = list_(theta[1:(t + 1)]),
    standard_errors = list_(sqrt(diag(fit$V))[1:(t + 1)]), variance = num(s^2), log_likelihood = num(f(theta)), modes = list_(mode), means = list_(mean), deviations = list_(sd),
    tolerance = if (quadrature) "absolute:1e-6" else "absolute:5e-6", kind = "independent", source = paste0(tool, if (quadrature) " optim on a lattice of 1201 points" else " optim on Laplace's approximation", " (generators/regression.R)")))
  # the adjusted rate of the first group with its limits, by numerical slopes
  w <- n / sum(n); L <- function(q, b) { r <- sum(w * plogis(as.numeric(d$M %*% q[1:(t + 1)]) + b)); qlogis(r) }
  moved <- function(q) L(q, mean[1] + exp(q[t + 2]) * modes(q, d)[1] - mode[1])
  slopes <- gradient(moved, theta); byb <- (L(theta, mean[1] + 1e-5) - L(theta, mean[1] - 1e-5)) / 2e-5; v <- byb^2 * sd[1]^2 + sum(slopes * (fit$V %*% slopes)); value <- L(theta, mean[1])
  rates <- rbind(rates, data.frame(id = paste0(if (quadrature) "quadrature-" else "laplace-", case), rows = shown(y, n, X, g), nodes = if (quadrature) 40 else 1, rate = num(plogis(value)), lower = num(plogis(value - qnorm(.975) * sqrt(v))),
    upper = num(plogis(value + qnorm(.975) * sqrt(v))), tolerance = "absolute:5e-6", kind = "independent", source = paste0(tool, " numerical slopes of the fit (generators/regression.R)")))
}
write("random-intercepts", rows); write("random-intercept-rates", rates)

# --- ranks ---
rows <- NULL
for (case in 1:56) {
  k <- sample(2:8, 1); normal <- case %% 2 == 0
  a <- if (normal) round(rnorm(k), 3) else round(runif(k, .3, 40), 2); b <- if (normal) round(runif(k, .05, 1.5), 3) else round(runif(k, 5, 900), 1)
  cdf <- function(j, x) if (normal) pnorm(x, a[j], b[j]) else pbeta(x, a[j], b[j])
  over <- function(i, f) { q <- (seq_len(20000) - .5) / 20000; mean(f(if (normal) qnorm(q, a[i], b[i]) else qbeta(q, a[i], b[i]))) }
  high <- sapply(1:k, function(i) over(i, function(x) { v <- 1; for (j in setdiff(1:k, i)) v <- v * cdf(j, x); v }))
  mean <- sapply(1:k, function(i) 1 + over(i, function(x) { v <- 0 * x; for (j in setdiff(1:k, i)) v <- v + 1 - cdf(j, x); v }))
  rows <- rbind(rows, data.frame(id = paste0(if (normal) "effects-" else "rates-", case), distribution = if (normal) "normal" else "beta", first = list_(a), second = list_(b), mean_ranks = list_(mean), chances_highest = list_(high),
    tolerance = "absolute:0.03", kind = "independent", source = paste0(tool, " midpoint sums over quantiles; the library draws 100000 times: 0.03 is four standard errors of a mean rank (generators/regression.R)")))
}
write("ranks", rows)
