# Reference values for tests/estimate. Run here: Rscript references.R > references.csv
# R 4.2.2 with stats, survival 3.5-3, MASS 7.3-58.2, geepack 1.3.9, lme4 1.1-31. One row a value; values of one case stand in order.
suppressPackageStartupMessages({ library(survival); library(MASS); library(geepack); library(lme4) })
cat("case,value\n")
put <- function(case, values) cat(sprintf("%s,%.16g\n", case, as.numeric(values)), sep = "")

# Distributions.
for (p in c(1e-12, .001, .2, .5, .9, .975, .9999)) {
  put(paste("qnorm", p), qnorm(p))
  for (df in c(1, 2.5, 14, 400)) put(paste("qt", p, df), qt(p, df))
  for (df in c(1, 3, 24.5, 400)) put(paste("qchisq", p, df), qchisq(p, df))
  for (d in list(c(1, 5), c(3.7, 12.2), c(40, 2))) put(paste("qf", p, d[1], d[2]), qf(p, d[1], d[2]))
  for (d in list(c(1, 29), c(81, 183), c(.5, 7.5))) put(paste("qbeta", p, d[1], d[2]), qbeta(p, d[1], d[2]))
}
for (x in c(-8, -1.96, 0, .3, 5, 30)) {
  put(paste("pnorm", x), pnorm(x, lower.tail = FALSE))
  for (df in c(1, 2.5, 14, 400)) put(paste("pt", x, df), pt(x, df, lower.tail = FALSE))
}
for (x in c(.01, 1, 3.84, 25, 300)) {
  for (df in c(1, 3, 24.5, 400)) put(paste("pchisq", x, df), pchisq(x, df, lower.tail = FALSE))
  for (d in list(c(1, 5), c(3.7, 12.2), c(40, 2))) put(paste("pf", x, d[1], d[2]), pf(x, d[1], d[2], lower.tail = FALSE))
}
for (x in c(.001, .3, .95)) for (d in list(c(1, 29), c(81, 183), c(.5, 7.5))) put(paste("pbeta", x, d[1], d[2]), pbeta(x, d[1], d[2]))
for (k in c(0, 1, 7, 250)) put(paste("lchoose 500", k), lchoose(500, k))
for (n in c(0, 1, 5, 170, 2000)) put(paste("lfactorial", n), lfactorial(n))

# One proportion. mid-P: roots of P(X > x) + P(X = x)/2 = (1 - level)/2 and of its mirror image.
root <- function(f, lo, hi) uniroot(f, c(lo, hi), tol = 1e-15, maxiter = 10000)$root
for (v in list(c(81, 263, .9), c(81, 263, .99), c(3, 17, .9), c(1, 400, .99), c(199, 200, .95), c(30, 100, .5))) {
  x <- v[1]; n <- v[2]; level <- v[3]; name <- sprintf("%g/%g %g", x, n, level)
  put(paste("wilson", name), prop.test(x, n, correct = FALSE, conf.level = level)$conf.int)
  put(paste("wilson corrected", name), prop.test(x, n, correct = TRUE, conf.level = level)$conf.int)
  put(paste("clopper-pearson", name), binom.test(x, n, conf.level = level)$conf.int)
  a <- (1 - level) / 2
  put(paste("mid-p", name), c(root(function(p) pbinom(x, n, p, FALSE) + dbinom(x, n, p) / 2 - a, 0, 1),
                              root(function(p) pbinom(x - 1, n, p) + dbinom(x, n, p) / 2 - a, 0, 1)))
}

# Two proportions: Newcombe's method 10 and 11 from the limits that prop.test gives.
newcombe <- function(x1, n1, x2, n2, correct, level) {
  p1 <- x1 / n1; p2 <- x2 / n2
  i1 <- prop.test(x1, n1, correct = correct, conf.level = level)$conf.int
  i2 <- prop.test(x2, n2, correct = correct, conf.level = level)$conf.int
  p1 - p2 + c(-1, 1) * sqrt(c((p1 - i1[1])^2 + (i2[2] - p2)^2, (i1[2] - p1)^2 + (p2 - i2[1])^2))
}
put("newcombe 17/60 9/71 0.9", newcombe(17, 60, 9, 71, FALSE, .9))
put("newcombe corrected 17/60 9/71 0.9", newcombe(17, 60, 9, 71, TRUE, .9))

# Clustered proportion: MASS::bacteria, children as clusters. The robust variance of an independence GEE with an intercept only,
# times K/(K-1), is the between-cluster ratio variance on the logit scale.
bacteria$case <- as.numeric(bacteria$y == "y"); bacteria <- bacteria[order(bacteria$ID), ]
y <- tapply(bacteria$case, bacteria$ID, sum); n <- tapply(bacteria$case, bacteria$ID, length)
put("bacteria cases", y); put("bacteria n", n)
fit <- geeglm(case ~ 1, id = ID, data = bacteria, family = binomial, corstr = "independence", scale.fix = TRUE)
k <- length(y); p <- mean(bacteria$case); se <- summary(fit)$coefficients[1, 2] * sqrt(k / (k - 1))
put("bacteria se", se * p * (1 - p))
put("bacteria logit limits", plogis(qlogis(p) + c(-1, 1) * qt(.975, k - 1) * se))
put("bacteria mean squares", anova(lm(case ~ factor(ID), bacteria))[["Mean Sq"]])

# Two-by-two tables.
cells <- c(12, 5, 7, 30)
d <- data.frame(y = cells[c(1, 3)], z = cells[c(2, 4)], x = c(1, 0))
effect <- function(link, start = NULL) {
  s <- summary(glm(cbind(y, z) ~ x, binomial(link), d, start = start, control = glm.control(epsilon = 1e-12, maxit = 100)))
  s$coefficients[2, 1:2]
}
put("glm logit 12 5 7 30", effect("logit"))
put("glm log 12 5 7 30", effect("log", c(-1.5, 1)))
put("glm identity 12 5 7 30", effect("identity"))
m <- matrix(c(12, 5, 7, 30), 2, byrow = TRUE)
put("chisq 12 5 7 30", unlist(chisq.test(m, correct = FALSE)[c("statistic", "p.value")]))
put("chisq yates 12 5 7 30", unlist(chisq.test(m, correct = TRUE)[c("statistic", "p.value")]))

# Conditional odds ratio. fisher.test and mantelhaen.test stop uniroot at its default tolerance, so the roots are found again here
# from the hypergeometric weights that dhyper gives, to full precision; p values are theirs.
conditional <- function(logw, seen, level) {
  x <- seq_along(logw) - 1; s <- seen
  pr <- function(t) { w <- exp(logw + t * x - max(logw + t * x)); w / sum(w) }
  a <- (1 - level) / 2
  r <- function(f) exp(root(f, -40, 40))
  c(if (s == 0) 0 else if (s == max(x)) Inf else r(function(t) sum(pr(t) * x) - s),
    if (s == 0) 0 else r(function(t) sum(pr(t)[x >= s]) - a),
    if (s == max(x)) Inf else r(function(t) sum(pr(t)[x <= s]) - a))
}
weights2 <- function(m) { lo <- max(0, m[1, 1] - m[2, 2]); hi <- min(sum(m[1, ]), sum(m[, 1]))
  list(lo = lo, logw = dhyper(lo:hi, sum(m[1, ]), sum(m[2, ]), sum(m[, 1]), log = TRUE)) }
for (v in list(c(3, 1, 1, 3), c(2, 15, 10, 3), c(7, 27, 1, 33), c(12, 5, 7, 30), c(189, 10845, 104, 10933))) {
  m <- matrix(v, 2, byrow = TRUE); name <- paste(v, collapse = " "); w <- weights2(m)
  put(paste("fisher p", name), c(fisher.test(m)$p.value, fisher.test(m, alternative = "greater")$p.value, fisher.test(m, alternative = "less")$p.value))
  put(paste("fisher odds", name), conditional(w$logw, v[1] - w$lo, .95))
}
put("fisher table jobs", fisher.test(matrix(c(1, 2, 1, 0, 3, 3, 6, 1, 10, 10, 14, 9, 6, 7, 12, 11), 4), workspace = 2e6)$p.value)
put("fisher table 2x3", fisher.test(rbind(c(3, 0, 2), c(1, 5, 3)))$p.value)
put("fisher table 3x3", fisher.test(rbind(c(8, 3, 1), c(2, 6, 4), c(0, 3, 7)))$p.value)
put("fisher table 5x2", fisher.test(cbind(c(9, 4, 6, 2, 1), c(1, 3, 5, 8, 6)))$p.value)

# Strata. Titanic: class by sex by survival, women against men; survival counts as the case.
strata <- aperm(margin.table(Titanic, c(2, 4, 1))[2:1, 2:1, ], c(1, 2, 3))
put("titanic cells", apply(strata, 3, function(m) c(m[1, 1], m[1, 2], m[2, 1], m[2, 2])))
h <- mantelhaen.test(strata, correct = FALSE); hc <- mantelhaen.test(strata, correct = TRUE)
put("titanic odds", c(h$estimate, h$conf.int)); put("titanic cmh", c(h$statistic, h$p.value, hc$statistic, hc$p.value))
convolve2 <- function(a, b) { s <- rep(0, length(a) + length(b) - 1); for (i in seq_along(a)) s[i + seq_along(b) - 1] <- s[i + seq_along(b) - 1] + a[i] * b; s }
exact <- function(array) {
  ws <- lapply(seq_len(dim(array)[3]), function(i) weights2(array[, , i]))
  w <- Reduce(convolve2, lapply(ws, function(w) exp(w$logw)))
  conditional(log(w), sum(array[1, 1, ]) - sum(sapply(ws, function(w) w$lo)), .95)
}
rabbits <- array(c(0, 0, 6, 5, 3, 0, 3, 6, 6, 2, 0, 4, 5, 6, 1, 0, 2, 5, 0, 0), c(2, 2, 5))
for (set in list(list("ucb", UCBAdmissions), list("rabbits", rabbits), list("titanic", strata))) {
  put(paste(set[[1]], "exact odds"), exact(unclass(set[[2]])))
  put(paste(set[[1]], "exact p"), mantelhaen.test(set[[2]], exact = TRUE)$p.value)
}

# Pairs and trends.
for (v in list(c(150, 86), c(12, 2), c(0, 5), c(7, 7), c(21, 9))) {
  name <- paste(v, collapse = " "); m <- matrix(c(10, v[2], v[1], 10), 2)
  put(paste("mcnemar", name), c(binom.test(v[1], sum(v))$p.value, mcnemar.test(m, correct = FALSE)$statistic, mcnemar.test(m)$statistic))
  i <- binom.test(v[1], sum(v))$conf.int; put(paste("mcnemar odds", name), i / (1 - i))
}
put("trend", unlist(prop.trend.test(c(2, 5, 9, 14), c(30, 32, 28, 30))[c("statistic", "p.value")]))
put("trend scores", unlist(prop.trend.test(c(20, 15, 9, 5, 4), c(31, 28, 30, 33, 29), c(0, 1, 2, 4, 8))[c("statistic", "p.value")]))
put("trend heterogeneity", unlist(prop.test(c(20, 15, 9, 5, 4), c(31, 28, 30, 33, 29))[c("statistic", "p.value")]))

# Rates.
for (v in list(c(0, 12, .95), c(3, 1, .9), c(15, 1234.5, .95), c(137, 24.19893, .95), c(2500, 80, .99)))
  put(sprintf("rate %.10g/%.10g %g", v[1], v[2], v[3]), poisson.test(v[1], v[2], conf.level = v[3])$conf.int)
for (v in list(c(11, 800, 21, 3011), c(0, 40, 6, 55), c(30, 100, 18, 95))) {
  r <- poisson.test(v[c(1, 3)], v[c(2, 4)])
  put(paste("rate ratio", paste(v, collapse = " ")), c(r$estimate, r$conf.int, r$p.value))
}

# Survival: invented times with ties, a level stretch at exactly one half, and three groups.
put("km 5 days", (function() { f <- survfit(Surv(c(1, 2, 3, 4, 5, 6, 7, 8), c(1, 1, 1, 1, 0, 1, 0, 1)) ~ 1, conf.type = "log-log")
  c(f$surv[f$n.event > 0], quantile(f, .5)$quantile) })())
t3 <- c(4, 9, 9, 12, 20, 20, 33, 41, 6, 9, 15, 15, 15, 28, 40, 52, 3, 3, 11, 19, 20, 31, 47, 60, 61)
e3 <- c(1, 1, 0, 1, 1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 1, 0)
g3 <- rep(1:3, c(8, 8, 9))
for (type in c("log-log", "log")) {
  f <- survfit(Surv(t3, e3) ~ 1, conf.type = type, conf.int = .9); keep <- f$n.event > 0
  put(paste("km", type), t(cbind(f$time, f$n.risk, f$n.event, f$surv, f$std.err * f$surv, f$lower, f$upper)[keep, ]))
  q <- quantile(f, c(.25, .5, .75)); put(paste("km quantiles", type), rbind(q$quantile, ifelse(is.na(q$lower), -1, q$lower), ifelse(is.na(q$upper), -1, q$upper)))
}
put("km mean to 30", summary(survfit(Surv(t3, e3) ~ 1), rmean = 30)$table[c("rmean", "se(rmean)")])
for (rho in c(0, 1)) {
  f <- survdiff(Surv(t3, e3) ~ g3, rho = rho)
  put(paste("logrank", rho), c(f$chisq, pchisq(f$chisq, 2, lower.tail = FALSE), f$obs, f$exp))
}
put("logrank variance", survdiff(Surv(t3, e3) ~ g3)$var)

# Agreement: balanced ratings. Variance components by REML equal those of the analysis of variance when none is 0.
r <- matrix(c(9, 2, 5, 8, 6, 1, 3, 2, 8, 4, 6, 8, 7, 1, 2, 6, 10, 5, 6, 9, 6, 2, 4, 7), 6, byrow = TRUE)
long <- data.frame(y = c(r), thing = factor(row(r)), rater = factor(col(r)))
v1 <- as.data.frame(VarCorr(lmer(y ~ 1 + (1 | thing), long)))$vcov; names(v1) <- c("thing", "rest")
put("icc 1 1", v1["thing"] / sum(v1))
v2 <- as.data.frame(VarCorr(lmer(y ~ 1 + (1 | thing) + (1 | rater), long, control = lmerControl(optCtrl = list(rhoend = 1e-12)))))
v2 <- setNames(v2$vcov, v2$grp)
put("icc 2 1", v2["thing"] / sum(v2)); put("icc 3 1", v2["thing"] / (v2["thing"] + v2["Residual"]))
put("icc mean squares", anova(lm(y ~ thing + rater, long))[["Mean Sq"]]); put("icc within", anova(lm(y ~ thing, long))[["Mean Sq"]][2])

# Adjusted p values: the fifteen of Benjamini & Hochberg (1995), from memory, and a list with ties.
bh <- c(.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1)
put("p BH", p.adjust(bh, "BH")); put("p holm", p.adjust(bh, "holm"))
ties <- c(.04, .01, .01, .2, .03, .9, .03); put("ties BH", p.adjust(ties, "BH")); put("ties holm", p.adjust(ties, "holm"))

# Description: invented toe lengths.
toes <- c(81.5, 78, 90.25, 84, 84, 76.5, 101, 88.75, 79.5)
put("toes", c(mean(toes), sd(toes), min(toes), quantile(toes, c(.25, .5, .75)), max(toes)))
put("toes autocorrelation", acf(toes, plot = FALSE, lag.max = 3)$acf[2:4])
put("sem limits", (function() { x <- c(4, 6, 5, 9, 11, 3, 3.5, 8); g <- c(1, 1, 1, 2, 2, 3, 3, 3)
  s <- summary(lm(x ~ factor(g))); ss <- s$sigma^2 * s$df[2]; c(s$sigma, sqrt(ss / qchisq(c(.975, .025), s$df[2]))) })())
put("bland-altman", (function() {
  a <- c(494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427)
  b <- c(512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451)
  c(mean(a - b), sd(a - b), t.test(a, b, paired = TRUE)$conf.int) })())
