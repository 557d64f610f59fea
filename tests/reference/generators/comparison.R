# Reference values from R for the comparison of sites, second part: tables of any size, shrinkage, and each model fit on at least 30 random data sets
# (lme4 for the random intercept, metafor for the variance between groups, nested root finding for the beta-binomial and gamma-Poisson fits).
# Run from the repository root with Debian's r-base-core, r-cran-lme4 and r-cran-metafor:  Rscript tests/reference/generators/comparison.R
suppressMessages({ library(metafor); library(lme4) })
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
int <- function(x) paste(format(x, scientific = FALSE, trim = TRUE), collapse = " ")
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
options(scipen = 99)

# --- tables of any size ---
set.seed(20261128)
rows <- NULL
while (is.null(rows) || nrow(rows) < 56) {
  r <- sample(2:5, 1); c <- sample(2:4, 1); w <- matrix(rexp(r * c), r)
  t <- matrix(rpois(r * c, w * sample(c(.7, 2, 4), 1)), r)
  if (any(rowSums(t) == 0) || any(colSums(t) == 0) || sum(t) > 60) next
  p <- fisher.test(t, workspace = 2e8)$p.value
  rows <- rbind(rows, data.frame(id = paste0("drawn-", nrow(rows) + is.null(rows)), table = paste(apply(t, 1, int), collapse = ";"), p_value = num(min(1, p)),
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, " fisher.test (generators/comparison.R)")))
}
rows$id <- paste0("drawn-", seq_len(nrow(rows)))
write("exact-tables", rows)

# --- gamma-Poisson, Marshall, Efron and Morris ---
set.seed(20261129)
rows <- NULL; moments <- NULL
while (is.null(rows) || nrow(rows) < 60) {
  k <- sample(c(2, 3, 5, 12, 60), 1); E <- signif(exp(rnorm(k, sample(c(-1, 1, 4), 1), sample(c(.3, 1.5), 1))), 5); s <- sample(c(.3, 1, 4, 30), 1); m <- sample(c(.4, 1, 2), 1)
  O <- rpois(k, E * rgamma(k, s, s / m))
  if (sum(O) == 0) next
  mean_ <- function(phi) uniroot(function(mu) sum((O - mu * E) / (1 + phi * mu * E)), c(1e-9, 1e4), tol = 1e-14)$root
  log_ <- function(a, mu) sum(dnbinom(O, size = a, mu = mu * E, log = TRUE))
  score <- function(l) { a <- exp(l); mu <- mean_(1 / a); sum(digamma(a + O) - digamma(a) + log(a / (a + mu * E)) + 1 - (a + O) / (a + mu * E)) }
  grid <- seq(-4, 9, .25); values <- sapply(grid, score); at <- which(values[-1] <= 0 & values[-length(values)] > 0)
  if (length(at) != 1) next # at the edge of no spread, or with two tops: the library's own tests hold those
  a <- exp(uniroot(score, grid[at + 0:1], tol = 1e-14)$root); mu <- mean_(1 / a); b <- a / mu; conf <- sample(c(.9, .95), 1); log <- log_(a, mu)
  if (log < sum(dpois(O, sum(O) / sum(E) * E, log = TRUE)) + 1e-6) next
  rows <- rbind(rows, data.frame(id = paste0("drawn-", nrow(rows)), observed = int(O), expected = list_(E), confidence = conf, shape = num(a), rate = num(b), mean = num(mu), log_likelihood = num(log),
    first_ratios = list_(((a + O) / (b + E))[1:2]), last_ratios = "", lower = num(qgamma((1 - conf) / 2, a + O[1], b + E[1])), upper = num(qgamma((1 + conf) / 2, a + O[1], b + E[1])),
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, " uniroot on digamma functions; dnbinom; qgamma (generators/comparison.R)")))
}
rows$id <- paste0("drawn-", seq_len(nrow(rows)))
write("gamma-poisson", rows)
rows <- NULL; normal <- NULL
for (case in 1:55) {
  k <- sample(c(2, 5, 12, 60), 1); E <- signif(exp(rnorm(k, 1, 1)), 5); O <- rpois(k, E * rgamma(k, 2, 2)); if (sum(O) == 0) O[1] <- 1
  m <- sum(O) / sum(E); s2 <- weighted.mean((O / E - m)^2, E); A <- max(0, s2 - m / mean(E)); C <- A / (A + m / E)
  rows <- rbind(rows, data.frame(id = paste0("drawn-", case), observed = int(O), expected = list_(E), mean = num(m), variance = num(A), first_ratios = list_((C * O / E + (1 - C) * m)[1:2]),
    tolerance = "absolute:1e-11", kind = "independent", source = paste0(tool, " weighted.mean and the formula of Marshall 1991 (generators/comparison.R)")))
  k <- sample(c(4, 5, 12, 60), 1); v <- signif(rexp(1) + .01, 4); t <- signif(rnorm(k, 2, sample(c(0, .5, 3), 1)), 5); x <- signif(rnorm(k, t, sqrt(v)), 8); S <- var(x) * (k - 1); f <- max(0, 1 - (k - 3) * v / S)
  e <- mean(x) + f * (x - mean(x))
  normal <- rbind(normal, data.frame(id = paste0("drawn-", case), values = list_(x), variance = num(v), truth = list_(t), mean = num(mean(x)), distance = num(S / v), factor = num(f), estimates = list_(e),
    efficiency = num(sum((x - t)^2) / sum((e - t)^2)), tolerance = "absolute:1e-8", kind = "independent", source = paste0(tool, " var and the formula of Efron and Morris 1975 (generators/comparison.R)")))
}
write("marshall-shrinkage", rows); write("normal-shrinkage", normal)

# --- beta-binomial: lbeta, for each precision the best mean by its slope, then the precision ---
set.seed(20261130)
rows <- NULL
while (is.null(rows) || nrow(rows) < 40) {
  k <- sample(c(2, 3, 8, 25, 80), 1); n <- sample(c(6, 40, 900), k, TRUE) + sample(0:9, k, TRUE); m <- sample(c(.02, .1, .4), 1); s <- sample(c(2, 10, 60), 1); y <- rbinom(k, n, rbeta(k, m * s, (1 - m) * s))
  if (case_none <- runif(1) < .3) y[1] <- 0 # a site with no positives
  if (sum(y) == 0 || sum(y) == sum(n)) next
  slope_a <- function(a, b) sum(digamma(a + y) - digamma(a) - digamma(a + b + n) + digamma(a + b))
  slope_b <- function(a, b) sum(digamma(b + n - y) - digamma(b) - digamma(a + b + n) + digamma(a + b))
  mean_ <- function(s) uniroot(function(l) { p <- plogis(l); slope_a(p * s, (1 - p) * s) - slope_b(p * s, (1 - p) * s) }, c(-14, 14), tol = 1e-14)$root
  score <- function(l) { s <- exp(l); p <- plogis(mean_(s)); p * slope_a(p * s, (1 - p) * s) + (1 - p) * slope_b(p * s, (1 - p) * s) }
  grid <- seq(-3, 9, .25); values <- tryCatch(sapply(grid, score), error = function(e) NULL); if (is.null(values)) next
  at <- which(values[-1] <= 0 & values[-length(values)] > 0); if (length(at) != 1) next
  s <- exp(uniroot(score, grid[at + 0:1], tol = 1e-14)$root); p <- plogis(mean_(s)); a <- p * s; b <- s - a
  log <- sum(lchoose(n, y) + lbeta(a + y, b + n - y) - lbeta(a, b)); if (log < sum(dbinom(y, n, sum(y) / sum(n), log = TRUE)) + 1e-6) next
  rows <- rbind(rows, data.frame(id = paste0("root-", nrow(rows)), events = int(y), trials = int(n), alpha = num(a), beta = num(b), mean = num(p), correlation = num(1 / (s + 1)), log_likelihood = num(log),
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, " uniroot on digamma functions (generators/comparison.R)")))
}
rows$id <- paste0("root-", seq_len(nrow(rows)))
write("beta-binomial-roots", rows)

# --- random effects: at least thirty of each method, with two groups and groups all alike among them ---
set.seed(20261131)
rows <- NULL
methods <- c("dersimonian-laird" = "DL", "paule-mandel" = "PM", "restricted-maximum-likelihood" = "REML", "maximum-likelihood" = "ML", "hedges-olkin" = "HE")
for (m in names(methods)) { found <- 0
  while (found < 31) {
    k <- sample(c(2, 3, 5, 10, 30), 1); v <- signif(exp(rnorm(k, -1, sample(c(.2, 1, 2), 1))), 8); spread <- sample(c(0, .1, 1), 1); y <- signif(rnorm(k, -3, sqrt(v + spread)), 8)
    fit <- tryCatch(suppressWarnings(rma(y, v, method = methods[[m]], control = list(threshold = 1e-12, maxiter = 20000, tol = 1e-12))), error = function(e) NULL)
    if (is.null(fit) || (fit$tau2 > 0 && fit$tau2 < 1e-5)) next
    log_ <- function(t) { w <- 1 / (v + t); mu <- sum(w * y) / sum(w); -.5 * (sum(log(v + t)) + sum(w * (y - mu)^2) + if (m == "restricted-maximum-likelihood") log(sum(w)) else 0) }
    if (grepl("likelihood", m) && any(sapply(c(0, exp(seq(-12, 4, .1))), log_) > log_(fit$tau2) + 1e-9)) next
    found <- found + 1
    rows <- rbind(rows, data.frame(id = paste0(m, "-", found), values = list_(y), variances = list_(v), method = m, confidence = .95, between_variance = num(fit$tau2), mean = num(fit$beta), standard_error = num(fit$se),
      tolerance = "absolute:2e-7", kind = "independent", source = paste0(tool, " metafor ", packageVersion("metafor"), " rma (generators/comparison.R)")))
  } }
write("random-effects-methods", rows)

# --- random intercept by lme4 ---
set.seed(20261132)
shown <- function(y, n, X, g) paste(paste0(y, "/", n, ":", if (ncol(X) == 0) "" else apply(X, 1, function(r) paste(num(r), collapse = ";")), "@", g), collapse = " ")
rows <- NULL; counts <- c(laplace = 0, quadrature = 0)
kinds <- c("drawn", "drawn", "no-positives", "two-sites", "no-tests", "drawn", "drawn")
while (any(counts < 36)) {
  way <- names(which.min(counts)); kind <- sample(kinds, 1)
  G <- if (kind == "two-sites") 2 else sample(c(5, 12, 30), 1); per <- sample(1:4, 1); g <- rep(0:(G - 1), each = per); t <- sample(0:2, 1); k <- G * per; if (k <= t + 2) next
  X <- matrix(0, k, t); for (j in seq_len(t)) X[, j] <- if (j == 1) as.numeric(rep(seq_len(per), G) > per / 2) else signif(rnorm(k), 3)
  n <- sample(c(20, 150, 800), k, TRUE) + sample(0:9, k, TRUE); y <- rbinom(k, n, plogis(rnorm(1, -2.5, .6) + as.numeric(X %*% rnorm(t, 0, .5)) + rnorm(G, 0, sample(c(.4, .8, 1.4), 1))[g + 1]))
  if (kind == "no-positives") y[g == 0] <- 0
  if (kind == "no-tests") { n[1] <- 0; y[1] <- 0 }
  use <- n > 0
  if (sum(y) < 6 || (t > 0 && qr(cbind(1, X)[use, ])$rank < t + 1)) next
  d <- data.frame(y = y, m = n - y, g = factor(g)); terms <- if (t > 0) { colnames(X) <- paste0("x", 1:t); d <- cbind(d, X); paste(colnames(X), collapse = " + ") } else "1"
  formula <- as.formula(paste("cbind(y, m) ~", terms, "+ (1 | g)"))
  warned <- FALSE
  fit <- withCallingHandlers(tryCatch(suppressMessages(glmer(formula, data = d[use, ], family = binomial, nAGQ = if (way == "laplace") 1 else 25,
    control = glmerControl(optimizer = "nloptwrap", tolPwrss = 1e-13, optCtrl = list(xtol_abs = 1e-11, ftol_abs = 1e-14, xtol_rel = 1e-12, maxeval = 20000)))), error = function(e) NULL),
    warning = function(w) { warned <<- TRUE; invokeRestart("muffleWarning") })
  if (is.null(fit) || warned || isSingular(fit) || VarCorr(fit)$g[1] < .02 || VarCorr(fit)$g[1] > 9) next
  counts[way] <- counts[way] + 1
  rows <- rbind(rows, data.frame(id = paste0(way, "-", counts[way], "-", kind), rows = shown(y, n, X, g), nodes = if (way == "laplace") 1 else 25, coefficients = list_(fixef(fit)),
    standard_errors = list_(sqrt(diag(as.matrix(vcov(fit))))), variance = num(VarCorr(fit)$g[1]), log_likelihood = if (way == "laplace") num(as.numeric(logLik(fit))) else "", modes = list_(ranef(fit)$g[[1]]),
    tolerance = "absolute:2e-4", kind = "independent", source = paste0(tool, " lme4 ", packageVersion("lme4"), " glmer (generators/comparison.R); its search stops before the top: hence 2e-4")))
}
write("random-intercepts-lme4", rows)
