# Invented foot records for the regression tests. Run: Rscript make-feet.R > feet.csv   (R 4.2.2; base only)
# Horse names repeat between yards on purpose; numbers of horses and feet differ.
set.seed(70214, kind = "Mersenne-Twister", normal.kind = "Inversion", sample.kind = "Rejection")
grounds <- c("clay", "peat", "sand")
rows <- list()
for (yard in 1:14) {
  ground <- grounds[1 + yard %% 3]; yardEffect <- rnorm(1, 0, 0.6); wetYard <- rnorm(1, 20, 8)
  for (horse in seq_len(sample(2:7, 1))) {
    horseEffect <- rnorm(1, 0, 0.8); age <- sample(3:24, 1); shod <- rbinom(1, 1, 0.4)
    date <- as.Date("2023-11-05") + sample(0:700, 1)
    wet <- max(0, round(wetYard + rnorm(1, 0, 6), 1)); days <- sample(20:90, 1)
    for (foot in sort(sample(c("LF", "RF", "LH", "RH"), sample(2:4, 1)))) {
      hind <- as.integer(foot %in% c("LH", "RH"))
      eta <- -1.6 + 0.045 * wet + 0.5 * hind + c(clay = 0, peat = 0.7, sand = -0.3)[ground] + yardEffect + horseEffect
      rows[[length(rows) + 1]] <- data.frame(
        yard = sprintf("Y%02d", yard), horse = paste0("H", horse), foot = foot, hind = hind, ground = ground, age = age, shod = shod,
        visitDate = format(date), wet = wet, horseDays = days,
        thrush = rbinom(1, 1, plogis(eta)), feetExamined = sample(0:4, 1, prob = c(1, 3, 3, 3, 6)), lost = rpois(1, days * exp(-4.6 + 0.4 * shod + 0.02 * wet)),
        toeAngleDeg = round(52 - 2 * hind - 0.08 * age + 2 * yardEffect + 1.5 * horseEffect + 0.03 * wet * (hind - 0.5) + rnorm(1, 0, 1.2), 2),
        weight = round(runif(1, 0.5, 3), 1), times = sample(1:3, 1))
    }
  }
}
feet <- do.call(rbind, rows)
feet$casesFound <- rbinom(nrow(feet), feet$feetExamined, plogis(-1 + 0.04 * feet$wet + 0.4 * feet$hind))
feet$known <- round(0.1 * feet$age - 1, 2)
write.csv(feet, stdout(), row.names = FALSE, quote = FALSE)
