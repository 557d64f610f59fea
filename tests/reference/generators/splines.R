# Reference values from R for penalised splines. The basis is that of package splines; each fit is a series of least-squares fits by QR to the working
# values with rows of the penalty added (the library: Cholesky of the normal equations); the smoothing is found by optimize.
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/splines.R
library(splines)
tool <- paste0("R ", R.version$major, ".", R.version$minor, " (generators/splines.R)")
options(scipen = 99)
set.seed(20261129)
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
list_ <- function(x) paste(num(x), collapse = " ")
fit <- function(family, x, y, n, segments, lower, upper, lambda) {
  h <- (upper - lower) / segments
  B <- splineDesign(lower + h * (-3:(segments + 3)), x, ord = 4, outer.ok = TRUE)
  D <- diff(diag(ncol(B)), differences = 2)
  beta <- rep(if (family == "binomial") qlogis(sum(y) / sum(n)) else log(sum(y) / sum(n)), ncol(B))
  mu <- function(eta) if (family == "binomial") plogis(eta) else exp(eta)
  ll <- function(eta) if (family == "binomial") sum(y * plogis(eta, log.p = TRUE) + (n - y) * plogis(-eta, log.p = TRUE)) else sum(y * eta - n * exp(eta))
  pen <- function(b) ll(as.numeric(B %*% b)) - lambda / 2 * sum((D %*% b)^2)
  for (step in 1:300) {
    eta <- as.numeric(B %*% beta); m <- mu(eta); w <- if (family == "binomial") n * m * (1 - m) else n * m
    z <- eta + (y - n * m) / w
    q <- qr(rbind(sqrt(w) * B, sqrt(lambda) * D)); new <- qr.coef(q, c(sqrt(w) * z, rep(0, nrow(D))))
    change <- new - beta; s <- 1
    while (s > 1e-10 && pen(beta + s * change) < pen(beta)) s <- s / 2
    beta <- beta + s * change
    if (max(abs(change)) < 1e-11) break
  }
  eta <- as.numeric(B %*% beta); m <- mu(eta); w <- if (family == "binomial") n * m * (1 - m) else n * m
  q <- qr(rbind(sqrt(w) * B, sqrt(lambda) * D)); Q <- qr.Q(q); ed <- sum(Q[seq_along(x), ]^2)
  V <- solve(qr.R(q)); V[q$pivot, ] <- V; se <- sqrt(rowSums((B %*% V)^2))
  log_ <- if (family == "binomial") sum(dbinom(y, n, m, log = TRUE)) else sum(dpois(y, n * m, log = TRUE))
  sat <- if (family == "binomial") sum(dbinom(y, n, y / n, log = TRUE)) else sum(dpois(y, y, log = TRUE))
  e <- eigen(D %*% t(D), symmetric = TRUE, only.values = TRUE)$values
  dev <- 2 * (sat - log_); k <- length(x)
  reml <- log_ - lambda / 2 * sum((D %*% beta)^2) + sum(log(lambda * e)) / 2 - sum(log(abs(diag(qr.R(q))))) + log(2 * pi)
  list(ed = ed, dev = dev, gcv = k * dev / (k - ed)^2, reml = reml, eta = eta, se = se, mu = mu)
}
rows <- NULL
add <- function(id, family, x, y, n, segments, lower, upper, smoothing, confidence, tolerance) {
  f <- function(l) fit(family, x, y, n, segments, lower, upper, exp(l))
  lambda <- suppressWarnings(as.numeric(smoothing))
  if (is.na(lambda)) {
    score <- function(l) { g <- f(l); if (smoothing != "cross-validation") -g$reml else if (length(x) - g$ed < length(x) / 10) Inf else log(g$gcv) }
    at <- seq(-16, 15, by = .5); s <- sapply(at, score); at <- at[is.finite(s)]; s <- s[is.finite(s)]; b <- which.min(s)
    if (b < 2 || b >= length(at) - 1 || sum(diff(sign(diff(s))) > 0) != 1) return(FALSE)
    lambda <- exp(optimize(score, at[b] + c(-.5, .5), tol = 1e-9)$minimum)
  }
  g <- f(log(lambda)); z <- qnorm((1 + confidence) / 2)
  rows <<- rbind(rows, data.frame(id = id, family = family, counts = paste(paste0(num(x), ":", num(y), "/", num(n)), collapse = " "), segments = segments, lower = num(lower), upper = num(upper),
    smoothing = smoothing, confidence = num(confidence), at = "", degrees_of_freedom = num(g$ed), deviance = if (g$dev > .5) num(g$dev) else "", criterion = num(g$dev + 2 * g$ed), cross_validation = if (g$dev > .5) num(g$gcv) else "", restricted_log_likelihood = num(g$reml),
    rates = list_(g$mu(g$eta)), lowers = list_(g$mu(g$eta - z * g$se)), uppers = list_(g$mu(g$eta + z * g$se)), tolerance = tolerance, kind = "independent", source = tool))
  TRUE
}
case <- 0
while (is.null(rows) || nrow(rows) < 120) {
  case <- case + 1; done <- if (is.null(rows)) 0 else nrow(rows)
  family <- if (done %% 3 == 2) "poisson" else "binomial"
  k <- sample(c(8, 20, 60), 1); x <- if (runif(1) < .5) seq_len(k) else sort(signif(runif(k, 0, k), 4)); if (anyDuplicated(x)) next
  n <- sample(c(5, 60, 900), k, TRUE) + sample(0:9, k, TRUE); base <- sample(c(-3, -1, .5), 1)
  eta <- base + .8 * sin(2 * pi * x / k * sample(c(.5, 1, 2), 1)) + runif(1, -.5, .5) * x / k
  y <- if (family == "binomial") rbinom(k, n, plogis(eta)) else rpois(k, n * exp(eta))
  if (sum(y) < 8 || sum(y > 0) < 4 || (family == "binomial" && sum(n - y) < 8)) next
  half <- min(diff(x)) / 2; segments <- sample(c(4, 12, 25), 1)
  smoothing <- if (done < 60) sample(c("0.02", "1", "30", "2000"), 1) else if (done %% 2 == 0) "restricted-likelihood" else "cross-validation"
  tryCatch(add(paste0(if (done < 60) "given-" else "chosen-", case), family, x, y, n, segments, min(x) - half, max(x) + half, smoothing, sample(c(.9, .95, .99), 1), if (done < 60) "relative:1e-7" else "relative:2e-5"), error = function(e) FALSE)
}
write.table(rows, "tests/reference/penalised-splines-generated.csv", sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
