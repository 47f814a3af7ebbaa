# Rain indices, usual rain, a water balance and radiation, each written out in base R from its definition, on an invented rain series
# with gaps and with spells over the ends of years. Run in this folder: Rscript references.R
options(digits = 15)
set.seed(20261126)
dates <- seq(as.Date("2019-07-01"), as.Date("2024-06-30"), by = "day")
month <- as.integer(format(dates, "%m"))
year <- as.integer(format(dates, "%Y"))
n <- length(dates)
wet <- logical(n)
for (i in seq_len(n)) wet[i] <- runif(1) < (if (i > 1 && wet[i - 1]) 0.7 else 0.25)
rain <- ifelse(wet, round(rgamma(n, 0.8, scale = 8), 1), 0)
rain[dates >= "2020-12-12" & dates <= "2021-01-20"] <- 0.4       # dry spell over a year's end
rain[dates >= "2022-12-22" & dates <= "2023-01-25"] <- 2.3       # wet spell over a year's end
rain[dates == "2021-01-22"] <- 61.5
rain[dates %in% as.Date(c("2022-03-03", "2022-08-10", "2022-08-11"))] <- NA
rain[dates >= "2021-06-05" & dates <= "2021-06-17"] <- NA        # 13 days: more than 3 of the month, not more than 15 of the year
rain[dates >= "2023-09-01" & dates <= "2023-09-16"] <- NA        # 16 days
tmin <- round(6 - 5 * cos(2 * pi * (month - 0.5) / 12) + rnorm(n, 0, 2), 1)
tmax <- round(tmin + runif(n, 2, 11), 1)
write.csv(data.frame(date = dates, rain_mm = rain, temp_min_c = tmin, temp_max_c = tmax), "rain.csv", row.names = FALSE, quote = FALSE, na = "")

out <- data.frame(what = character(), key = character(), value = numeric())
put <- function(what, key, value) out[nrow(out) + 1, ] <<- list(what, as.character(key), as.numeric(value))

# Longest run that ends inside, its length counted from its true beginning; and longest run when cut off at both ends.
lengthAtEnd <- function(x) {
  x[is.na(x)] <- FALSE
  run <- rle(x)
  at <- cumsum(run$lengths)
  res <- integer(length(x))
  res[at[run$values]] <- run$lengths[run$values]
  res
}
five <- as.numeric(stats::filter(rain, rep(1, 5), sides = 1))
indices <- function(what, inside, key) {
  r <- rain[inside]
  known <- r[!is.na(r)]
  w <- known[known >= 1]
  put(paste0(what, "/missingDays"), key, sum(is.na(r)))
  put(paste0(what, "/prcptotMm"), key, sum(w))
  put(paste0(what, "/wetDays"), key, length(w))
  put(paste0(what, "/sdiiMm"), key, mean(w))
  put(paste0(what, "/r10mmDays"), key, sum(known >= 10))
  put(paste0(what, "/r20mmDays"), key, sum(known >= 20))
  put(paste0(what, "/rx1dayMm"), key, max(known))
  put(paste0(what, "/rx5dayMm"), key, max(five[inside], na.rm = TRUE))
  put(paste0(what, "/cddDays"), key, max(lengthAtEnd(rain < 1)[inside]))
  put(paste0(what, "/cwdDays"), key, max(lengthAtEnd(rain >= 1)[inside]))
  put(paste0(what, "/cddDaysWithin"), key, max(lengthAtEnd(r < 1)))
  put(paste0(what, "/cwdDaysWithin"), key, max(lengthAtEnd(r >= 1)))
}
for (y in 2020:2022) indices("year", year == y, y)
for (m in c(1, 5, 12)) for (y in c(2020, 2021, 2022, 2023)) indices("month", year == y & month == m, sprintf("%d-%02d", y, m))

# Usual rain: mean over the days of the month in each year that has 20 or more complete windows, then over the years.
for (w in c(7, 28)) {
  total <- as.numeric(stats::filter(rain, rep(1, w), sides = 1))
  for (m in 1:12) {
    means <- tapply(total[month == m], year[month == m], function(x) if (sum(!is.na(x)) >= 20) mean(x, na.rm = TRUE) else NA)
    means <- means[!is.na(means)]
    put(sprintf("normal%d/mm", w), m, mean(means))
    put(sprintf("normal%d/years", w), m, length(means))
  }
}

# Radiation above the atmosphere by adding up the sine of the sun's height over the day (FAO-56 equations 22 to 24 give the sun's
# place), and the water balance of the first year from a known start.
radiation <- function(lat, j) {
  phi <- lat * pi / 180
  d <- 1 + 0.033 * cos(2 * pi * j / 365)
  delta <- 0.409 * sin(2 * pi * j / 365 - 1.39)
  height <- function(h) pmax(0, sin(phi) * sin(delta) + cos(phi) * cos(delta) * cos(h))
  h <- (seq_len(20000) - 0.5) / 20000 * 2 * pi - pi
  24 * 60 * 0.0820 * d * mean(height(h))
}
for (lat in c(-66, -20, 0, 53.2, 80)) for (j in c(15, 105, 196, 288)) put("radiation", sprintf("%g %d", lat, j), radiation(lat, j))
storage <- 40
for (i in which(dates <= "2020-06-30")) {
  j <- as.integer(format(dates[i], "%j"))
  et <- max(0, 0.0023 * ((tmin[i] + tmax[i]) / 2 + 17.8) * sqrt(tmax[i] - tmin[i]) * 0.408 * radiation(53.2, j))
  water <- storage + rain[i] - round(et, 3)
  surplus <- max(0, water - 75)
  storage <- min(75, max(0, water))
  if (j %% 30 == 0 || surplus > 5) {
    put("evapotranspiration", as.character(dates[i]), et)
    put("storage", as.character(dates[i]), storage)
    put("surplus", as.character(dates[i]), surplus)
  }
}
write.csv(out, "references.csv", row.names = FALSE, quote = FALSE)
