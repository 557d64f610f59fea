# Reference values of clustered proportions: Korn and Graubard's limits, Student-Wald limits, intraclass correlation by R's own analysis of
# variance on 0/1 records, and tests of two groups. Run from the repository root:  Rscript tests/reference/generators/clusters.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) ifelse(is.na(x), "undefined", trimws(formatC(x, digits = 17, format = "g")))
write <- function(name, frame)
  write.table(frame, paste0("tests/reference/", name, "-generated.csv"), sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
set.seed(20260213)

draw <- function(m, size, mean, rho) {
  n <- rpois(m, size) + 1
  a <- mean * (1 - rho) / rho; b <- (1 - mean) * (1 - rho) / rho
  list(rbinom(m, n, rbeta(m, a, b)), n)
}
weil <- list(
  "rat-control" = list(c(13,12,9,9,8,8,12,11,9,9,8,11,4,5,7,7), c(13,12,9,9,8,8,13,12,10,10,9,13,5,7,10,10)),
  "rat-treated" = list(c(12,11,10,9,10,9,9,8,8,4,7,4,5,3,3,0), c(12,11,10,9,11,10,10,9,9,5,9,7,10,6,10,7)))
sets <- weil
for (i in 1:54) {
  m <- c(2, 3, 4, 6, 9, 15, 29, 30, 60)[(i - 1) %% 9 + 1]
  repeat {
    s <- draw(m, c(3, 12, 40, 150)[(i - 1) %% 4 + 1], c(.02, .1, .4, .8, .95)[(i - 1) %% 5 + 1], c(.02, .15, .5)[(i - 1) %% 3 + 1])
    if (sum(s[[1]]) > 0 && sum(s[[1]]) < sum(s[[2]])) break
  }
  sets[[paste0("drawn-", i)]] <- s
}

# --- one group ---
rows <- NULL
for (s in names(sets)) {
  y <- sets[[s]][[1]]; n <- sets[[s]][[2]]; m <- length(n); N <- sum(n); p <- sum(y) / N
  v <- m / ((m - 1) * N^2) * sum((y - n * p)^2)
  for (confidence in c(.9, .95)) {
    tail <- (1 - confidence) / 2
    eff <- min(N, p * (1 - p) / v * (qt(tail, N - 1) / qt(tail, m - 1))^2)
    kg <- c(qbeta(tail, p * eff, eff * (1 - p) + 1), qbeta(tail, p * eff + 1, eff * (1 - p), lower.tail = FALSE))
    wald <- pmin(1, pmax(0, p + c(1, -1) * qt(tail, m - 1) * sqrt(v)))
    rows <- rbind(rows, data.frame(id = paste0(s, "-", confidence), events = paste(y, collapse = " "), trials = paste(n, collapse = " "), confidence = confidence,
      effective = num(eff), lower = num(kg[1]), upper = num(kg[2]), wald_lower = num(wald[1]), wald_upper = num(wald[2]),
      # R's own quantiles carry about ten digits at odd degrees of freedom.
      tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " qbeta and qt (generators/clusters.R)")))
  }
}
write("clustered-intervals", rows)

# --- intraclass correlation from lm on the 0/1 records ---
rows <- NULL
for (s in names(sets)) {
  y <- sets[[s]][[1]]; n <- sets[[s]][[2]]; m <- length(n); N <- sum(n); p <- sum(y) / N
  if (all(n == 1)) next
  records <- unlist(lapply(seq_along(n), function(i) c(rep(1, y[i]), rep(0, n[i] - y[i]))))
  # suppressWarnings: where no cluster has both outcomes R warns of a perfect fit
  a <- suppressWarnings(anova(lm(records ~ factor(rep(seq_along(n), n)))))
  b <- a[["Mean Sq"]][1]; w <- a[["Mean Sq"]][2]
  size <- (N - sum(n^2) / N) / (m - 1)
  rows <- rbind(rows, data.frame(id = s, events = paste(y, collapse = " "), trials = paste(n, collapse = " "), between = num(b), within = num(w), size = num(size),
    correlation = num((b - w) / (b + (size - 1) * w)), fleiss_cuzick = num(1 - sum(y * (n - y) / n) / ((N - m) * p * (1 - p))),
    tolerance = "absolute:1e-10", kind = "independent", source = paste0(tool, " anova(lm()) on 0/1 records (generators/clusters.R)")))
}
write("intraclass-correlations", rows)

# --- two groups ---
pairs <- list("rats" = list(weil[[1]], weil[[2]]))
for (i in 1:54) {
  repeat {
    one <- draw(c(4, 9, 20, 45)[(i - 1) %% 4 + 1], 15, c(.05, .3, .7)[(i - 1) %% 3 + 1], .1)
    two <- draw(c(5, 8, 25)[(i - 1) %% 3 + 1], 25, c(.1, .3, .5, .8)[(i - 1) %% 4 + 1], .2)
    inside <- function(s) sum(s[[1]]) > 0 && sum(s[[1]]) < sum(s[[2]])
    if (inside(one) && inside(two)) break
  }
  pairs[[paste0("drawn-", i)]] <- list(one, two)
}
deff <- function(s) {
  y <- s[[1]]; n <- s[[2]]; m <- length(n); N <- sum(n); p <- sum(y) / N
  N * (m / ((m - 1) * N^2) * sum((y - n * p)^2)) / (p * (1 - p))
}
rows <- NULL
for (k in names(pairs)) {
  g <- pairs[[k]]; y <- sapply(g, function(s) sum(s[[1]])); n <- sapply(g, function(s) sum(s[[2]])); d <- sapply(g, deff)
  # prop.test without correction is Pearson's chi-square; it takes effective counts as well.
  naive <- suppressWarnings(prop.test(y, n, correct = FALSE)); own <- suppressWarnings(prop.test(y / d, n / d, correct = FALSE))
  p <- sum(y) / sum(n); pooled <- sum((1 - n / sum(n)) * (y / n) * (1 - y / n) / (p * (1 - p)) * d)
  records <- do.call(rbind, lapply(1:2, function(j) do.call(rbind, lapply(seq_along(g[[j]][[2]]), function(i)
    data.frame(group = j, cluster = paste(j, i), y = c(rep(1, g[[j]][[1]][i]), rep(0, g[[j]][[2]][i] - g[[j]][[1]][i])))))))
  a <- suppressWarnings(anova(lm(y ~ factor(group) + factor(cluster), data = records)))
  M <- length(unique(records$cluster)); N <- nrow(records)
  size <- (N - sum(sapply(g, function(s) sum(s[[2]]^2) / sum(s[[2]])))) / (M - 2)
  b <- a[["Mean Sq"]][2]; w <- a[["Mean Sq"]][3]; rho <- (b - w) / (b + (size - 1) * w)
  factor <- sapply(g, function(s) 1 + (sum(s[[2]]^2) / sum(s[[2]]) - 1) * rho)
  donner <- sum((y - n * p)^2 / (factor * n * p * (1 - p)))
  field <- function(j, part) paste(g[[j]][[part]], collapse = " ")
  rows <- rbind(rows, data.frame(id = k, first_events = field(1, 1), first_trials = field(1, 2), second_events = field(2, 1), second_trials = field(2, 2),
    naive = num(unname(naive$statistic)), naive_p = num(naive$p.value), own = num(unname(own$statistic)), own_p = num(own$p.value),
    pooled_effect = num(pooled), pooled = num(unname(naive$statistic) / pooled), pooled_p = num(pchisq(unname(naive$statistic) / pooled, 1, lower.tail = FALSE)),
    correlation = num(rho), first_factor = num(factor[1]), second_factor = num(factor[2]), donner = num(donner), donner_p = num(pchisq(donner, 1, lower.tail = FALSE)),
    tolerance = "relative:1e-8", kind = "independent", source = paste0(tool, " prop.test; anova(lm()) and pchisq (generators/clusters.R)")))
}
write("clustered-tests", rows)
