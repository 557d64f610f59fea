# Reference values from R for flags: hypergeometric upper tails (phyper), Holm (p.adjust) and the step-down of the design,
# written here from its words. Run from the repository root:  Rscript tests/reference/generators/flags.R
tool <- paste0("R ", R.version$major, ".", R.version$minor)
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
stepdown <- function(n, x) {
  k <- length(n); p <- holm <- rep(NA, k); round <- rep(0, k); flagged <- rep(FALSE, k); pool <- seq_len(k); r <- 0
  while (length(pool) > 0) {
    r <- r + 1
    N <- sum(n[pool]); X <- sum(x[pool])
    now <- phyper(x[pool] - 1, X, N - X, n[pool], lower.tail = FALSE)
    adj <- p.adjust(now, "holm")
    p[pool] <- now; holm[pool] <- adj; round[pool] <- r
    worst <- which.min(now)
    if (!(adj[worst] < 0.01)) break
    flagged[pool[worst]] <- TRUE
    pool <- pool[-worst]
  }
  list(p = p, holm = holm, flagged = flagged, round = round)
}
set.seed(20260112)
cases <- list(
  none = list(n = c(900, 1100, 1000), x = c(3, 2, 4)),
  one_bad = list(n = c(5000, 5200, 4800, 5100), x = c(4, 40, 5, 3)),
  two_bad_the_second_hidden_by_the_first = list(n = c(5000, 5000, 5000, 5000, 5000), x = c(2, 400, 3, 20, 1)),
  ties = list(n = c(1000, 1000, 1000, 1000, 1000, 1000), x = c(0, 15, 0, 15, 1, 0)),
  no_event = list(n = c(10, 20, 30), x = c(0, 0, 0)),
  one_only = list(n = 500, x = 20),
  small_and_all_events = list(n = c(4, 3000, 3000), x = c(4, 3, 2)),
  nine_to_one_to_one = list(n = c(1000, 1000, 1000), x = c(9, 1, 1)),
  eight_to_one_to_one = list(n = c(1000, 1000, 1000), x = c(8, 1, 1)),
  unequal = list(n = c(20, 400, 9000, 150000, 60), x = c(1, 3, 15, 70, 4)),
  many = list(n = sample(50:20000, 120), x = NULL))
cases$many$x <- rpois(120, cases$many$n * 5e-4); cases$many$x[17] <- 60; cases$many$x[90] <- 45
rows <- NULL
for (name in names(cases)) {
  case <- cases[[name]]; s <- stepdown(case$n, case$x)
  rows <- rbind(rows, data.frame(id = paste0("flags-", gsub("_", "-", name)), trials = paste(case$n, collapse = " "), events = paste(case$x, collapse = " "),
    p = paste(num(s$p), collapse = " "), p_holm = paste(num(s$holm), collapse = " "), flagged = paste(as.integer(s$flagged), collapse = " "),
    round = paste(s$round, collapse = " "), tolerance = "relative:1e-9", kind = "independent", source = paste0(tool, " phyper and p.adjust (generators/flags.R)")))
}
write.table(rows, "tests/reference/flags-generated.csv", sep = ",", row.names = FALSE, quote = FALSE, eol = "\n")
