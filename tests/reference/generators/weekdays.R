# Reference values from R for weekdays within weeks: given the events of each week by enumeration of all its tables, or glm with a factor of the week.
# Run from the repository root with Debian's r-base-core:  Rscript tests/reference/generators/weekdays.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
list_ <- function(x) paste(num(x), collapse = " ")
options(scipen = 99)
set.seed(20261126)
names_ <- c("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
rows <- NULL; case <- 0
while (case < 70) {
  conditional <- case < 36
  D <- if (conditional) sample(2:4, 1) else sample(2:7, 1); W <- if (conditional) sample(3:12, 1) else sample(c(4, 12, 30), 1); days <- sort(sample(7, D)); effect <- rnorm(D, 0, sample(c(0, .6), 1))
  d <- expand.grid(day = seq_len(D), week = seq_len(W)); d$n <- sample(if (conditional) c(8, 30, 150) else c(40, 300, 2000), 1) + sample(0:9, nrow(d), TRUE)
  d$y <- rbinom(nrow(d), d$n, plogis(rnorm(W, if (conditional) -2.5 else -1.5, .7)[d$week] + effect[d$day] + rnorm(nrow(d), 0, sample(c(0, .3), 1))))
  if (conditional) { s <- tapply(d$y, d$week, sum); s <- pmin(s, tapply(d$n - d$y, d$week, sum)); if (max(s) > 9) next }
  d <- d[sample(nrow(d), nrow(d) - sample(0:2, 1)), ]; d <- d[order(d$week, d$day), ]
  if (!conditional && runif(1) < .4) { d$y <- round(d$y / 1.7, 3); d$n <- round(d$n / 1.7, 3) }
  if (any(tapply(d$y, d$day, sum) == 0) || length(unique(d$day)) < D) next
  keep <- unlist(lapply(split(d, d$week), function(w) nrow(w) > 1 && sum(w$y) > 0 && sum(w$y) < sum(w$n))); use <- d[d$week %in% names(keep)[keep], ]
  if (length(unique(use$day)) < D || any(tapply(use$y, use$day, sum) == 0) || any(tapply(use$n - use$y, use$day, sum) == 0)) next
  weeks <- split(use, use$week)
  if (conditional) {
    tables <- lapply(weeks, function(w) { m <- sum(w$y); g <- as.matrix(expand.grid(lapply(w$n, function(n) 0:min(n, m)))); g <- g[rowSums(g) == m, , drop = FALSE]
      list(g = g, base = rowSums(sapply(seq_along(w$n), function(j) lchoose(w$n[j], g[, j]))), day = w$day, y = w$y) })
    moments <- function(b) { log <- 0; S <- rep(0, D); I <- matrix(0, D, D); X2 <- 0
      for (k in tables) { e <- k$base + as.numeric(k$g %*% b[k$day]); z <- max(e) + log(sum(exp(e - max(e)))); pr <- exp(e - z); mu <- colSums(k$g * pr); V <- t(k$g) %*% (k$g * pr) - outer(mu, mu)
        log <- log + sum(lchoose(weeks[[1]]$n[0], 0)) + sum(k$y * b[k$day]) - z; S[k$day] <- S[k$day] + k$y - mu; I[k$day, k$day] <- I[k$day, k$day] + V
        r <- (k$y - mu)[-1]; X2 <- X2 + as.numeric(r %*% solve(V[-1, -1, drop = FALSE], r)) }
      list(log = log, S = S, I = I, X2 = X2) }
    b <- rep(0, D); null <- moments(b)$log; bad <- FALSE
    for (step in 1:60) { m <- moments(b); change <- tryCatch(solve(m$I[-1, -1, drop = FALSE], m$S[-1]), error = function(e) NULL); if (is.null(change) || max(abs(b)) > 15) { bad <- TRUE; break }; b[-1] <- b[-1] + change / max(1, max(abs(change)) / 2); if (max(abs(change)) < 1e-13) break }
    if (bad) next
    m <- moments(b); ratio <- 2 * (m$log - null); V <- rbind(0, cbind(0, solve(m$I[-1, -1, drop = FALSE]))); X2 <- m$X2
  } else {
    f <- suppressWarnings(glm(cbind(y, n - y) ~ factor(week) + factor(day), binomial(), use, epsilon = 1e-14, maxit = 60)); f0 <- suppressWarnings(glm(cbind(y, n - y) ~ factor(week), binomial(), use, epsilon = 1e-14, maxit = 60))
    at <- grep("day", names(coef(f))); if (anyNA(coef(f)) || max(abs(coef(f)[at])) > 8) next
    b <- c(0, coef(f)[at]); V0 <- summary(f, dispersion = 1)$cov.scaled[at, at, drop = FALSE]; V <- rbind(0, cbind(0, V0)); ratio <- f0$deviance - f$deviance; X2 <- sum(residuals(f, "pearson")^2)
  }
  df <- D - 1; rest <- nrow(use) - length(weeks) - df; if (rest < 1) next
  scale <- sample(c("binomial", "pearson", "pearson-at-least-one"), 1); phi <- switch(scale, binomial = 1, pearson = X2 / rest, max(1, X2 / rest)); if (ratio < 1e-3) next
  M <- diag(D) - 1 / D; e <- as.numeric(M %*% b); se <- sqrt(diag(M %*% V %*% M) * phi); q <- if (scale == "binomial") qnorm(.975) else qt(.975, rest)
  p <- if (scale == "binomial") pchisq(ratio, df, lower.tail = FALSE) else pf(ratio / phi / df, df, rest, lower.tail = FALSE)
  if (max(se) > 3) next # nearly separated: glm itself has few digits there
  case <- case + 1
  rows <- rbind(rows, data.frame(id = paste0(if (conditional) "given-" else "terms-", case), counts = paste(paste0(d$week, ":", names_[days[d$day]], ":", num(d$y), "/", num(d$n)), collapse = " "), adjustment = if (conditional) "conditional" else "terms", scale = scale,
    ratios = list_(exp(e)), errors = list_(se), lower = list_(exp(e - q * se)), upper = list_(exp(e + q * se)), likelihood_ratio = num(ratio), degrees_of_freedom = df, residual_degrees = rest, dispersion = num(X2 / rest), p_value = num(p),
    tolerance = "relative:1e-6", kind = "independent", source = paste0(tool, if (conditional) " enumeration" else " glm", " (generators/weekdays.R)")))
}
write.table(rows, "tests/reference/weekdays-generated.csv", sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
