# References for the estimates of a climate study. Run here: Rscript references.R > references.csv
# R 4.2.2 with survival 3.5-3 (clogit, survreg), splines, numDeriv 2016.8-1.1. Data: datasets::infert (anonymised; 83 matched sets), ../regression/feet.csv, ../cbpp.csv
suppressPackageStartupMessages({ library(survival); library(splines); library(numDeriv) })
cat("case,quantity,name,value\n")
put <- function(case, quantity, values, names = seq_along(values) - 1)
  cat(sprintf("%s,%s,%s,%.15g\n", case, quantity, gsub(",", "/", names), as.numeric(values)), sep = "")
feet <- read.csv("../regression/feet.csv"); feet$stable <- paste(feet$yard, feet$horse)

# Matched comparison: exact conditional likelihood.
infert <- datasets::infert; write.csv(infert[, c("stratum", "case", "spontaneous", "induced")], "infert-matched.csv", row.names = FALSE, quote = FALSE)
matched <- clogit(case ~ spontaneous + induced + strata(stratum), infert, method = "exact")
put("infert matched", "estimate", coef(matched)); put("infert matched", "se", sqrt(diag(vcov(matched))))
put("infert matched", "logLik", matched$loglik[2]); put("infert matched", "limits", t(confint(matched)))
within <- clogit(thrush ~ hind + weight + strata(stable), feet, method = "exact", control = coxph.control(eps = 1e-14))
put("feet matched", "estimate", coef(within)); put("feet matched", "se", sqrt(diag(vcov(within)))); put("feet matched", "logLik", within$loglik[2])
# Clustered by yard: sandwich of the scores of the strata, every choice of cases written out.
X <- as.matrix(feet[, c("hind", "weight")]); b <- coef(within)
scores <- t(sapply(split(seq_len(nrow(feet)), feet$stable), function(i) {
  m <- sum(feet$thrush[i]); if (m == 0 || m == length(i)) return(c(0, 0))
  sets <- combn(i, m, simplify = FALSE); sums <- t(sapply(sets, function(s) colSums(X[s, , drop = FALSE])))
  w <- exp(sums %*% b); colSums(X[i[feet$thrush[i] == 1], , drop = FALSE]) - colSums(sums * as.numeric(w)) / sum(w)
}))
yardOf <- feet$yard[match(rownames(scores), feet$stable)]
varies <- tapply(feet$thrush, feet$stable, function(y) any(y == 1) && any(y == 0))[rownames(scores)]
byYard <- rowsum(scores[varies, ], yardOf[varies]); G <- nrow(byYard)
V <- vcov(within) %*% crossprod(byYard) %*% vcov(within) * G / (G - 1)
put("feet matched", "se by yard", sqrt(diag(V))); put("feet matched", "clusters", G)

# Natural splines.
x <- c(-3, 0, 2.5, 10, 14.2, 33, 41, 55)
put("spline", "two knots", t(ns(x, knots = c(10, 30), Boundary.knots = c(0, 50))))
put("spline", "one knot and intercept", t(ns(x, knots = 12.5, Boundary.knots = c(1, 40), intercept = TRUE)))
put("spline", "no knot", t(ns(x, knots = numeric(0), Boundary.knots = c(0, 50))))

# Rate of events somewhere in their gaps: exponential time, interval-censored.
gaps <- data.frame(days = c(28, 35, 42, 42, 49, 56, 61, 30, 35, 47, 56, 58, 41, 39, 70, 44), event = c(0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 0, 1, 0, 0, 1, 0),
  cluster = rep(c("a", "b", "c", "d", "e"), c(4, 3, 3, 4, 2)))
rate <- function(d) survreg(Surv(ifelse(d$event == 1, 1e-12, d$days), ifelse(d$event == 1, d$days, NA), type = "interval2") ~ 1, d, dist = "exponential")
loglik <- function(h) sum(ifelse(gaps$event == 1, log(-expm1(-h * gaps$days)), -h * gaps$days))
h <- exp(optimise(function(l) loglik(exp(l)), c(-9, -2), maximum = TRUE, tol = 1e-12)$maximum)
fit <- rate(gaps); stopifnot(abs(exp(-coef(fit)) / h - 1) < 1e-6)
put("censored rate", "hazard", h); put("censored rate", "se log", sqrt(-1 / hessian(function(l) loglik(exp(l)), log(h))))
profile <- function(side) uniroot(function(l) loglik(exp(l)) - loglik(h) + qchisq(.95, 1) / 2, log(h) + side, tol = 1e-13)$root
put("censored rate", "profile", exp(c(profile(c(-3, 0)), profile(c(0, 3)))))
score <- ifelse(gaps$event == 1, h * gaps$days / expm1(h * gaps$days), -h * gaps$days)
meat <- sum(rowsum(score, gaps$cluster)^2) * 5 / 4; seC <- sqrt(meat) * -1 / hessian(function(l) loglik(exp(l)), log(h))
put("censored rate", "se log by cluster", seC); put("censored rate", "limits by cluster", h * exp(c(-1, 1) * qt(.975, 4) * seC))

# A logistic curve behind an imperfect examination.
wrong <- function(beta) { q <- 1 - .97 + (.85 + .97 - 1) * plogis(beta[1] + beta[2] * feet$wet + beta[3] * feet$hind); sum(dbinom(feet$thrush, 1, q, log = TRUE)) }
best <- optim(c(-2, .05, .5), function(b) -wrong(b), method = "BFGS", control = list(reltol = 1e-15, maxit = 500), gr = function(b) -grad(wrong, b))
q <- function(b) 1 - .97 + .82 * plogis(cbind(1, feet$wet, feet$hind) %*% b)
D <- jacobian(q, best$par); w <- 1 / (q(best$par) * (1 - q(best$par))); info <- crossprod(D, as.numeric(w) * D)
put("misclassified", "estimate", best$par); put("misclassified", "se", sqrt(diag(solve(info)))); put("misclassified", "logLik", wrong(best$par))
S <- D * as.numeric((feet$thrush - q(best$par)) * w); K <- length(unique(feet$yard))
put("misclassified", "se by yard", sqrt(diag(solve(info) %*% crossprod(rowsum(S, feet$yard)) %*% solve(info) * K / (K - 1))))
# The odds ratio of one table, by the delta method on the two proportions called cases (60 of 200 and 25 of 180).
lor <- function(p) { t <- (p + .95 - 1) / (.9 + .95 - 1); qlogis(t[1]) - qlogis(t[2]) }
p <- c(60 / 200, 25 / 180); g <- grad(lor, p); se <- sqrt(sum(g^2 * p * (1 - p) / c(200, 180)))
put("misclassified table", "odds ratio", exp(lor(p) + c(0, -1, 1) * qnorm(.975) * se))

# Weights of visits: chances of two logistic regressions.
set.seed(11); n <- 300
stretch <- data.frame(sinceDays = round(runif(n, 7, 70)), grade = sample(0:3, n, TRUE), horse = sample(1:40, n, TRUE))
stretch$visited <- rbinom(n, 1, plogis(-2 + .03 * stretch$sinceDays + .4 * stretch$grade))
write.csv(stretch, "stretches.csv", row.names = FALSE, quote = FALSE)
top <- fitted(glm(visited ~ sinceDays, binomial, stretch, control = list(epsilon = 1e-14))); bottom <- fitted(glm(visited ~ sinceDays + grade, binomial, stretch, control = list(epsilon = 1e-14)))
raw <- (top / bottom)[stretch$visited == 1]; limits <- quantile(raw, c(.05, .95)); cut <- pmin(limits[2], pmax(limits[1], raw))
put("visit weights", "weights", cut / mean(cut)); put("visit weights", "effective", sum(cut)^2 / sum(cut^2))

# Mixed logistic model of the herds, errors from the spread of the herds' scores: every herd's integral by a fine sum.
cbpp <- read.csv("../cbpp.csv"); P <- model.matrix(~ factor(period), cbpp); z <- seq(-9, 9, length.out = 4001); dz <- dnorm(z) * (z[2] - z[1])
herd <- function(i, th) { eta <- as.numeric(P[i, , drop = FALSE] %*% th[1:4]); u <- exp(th[5]) * z
  log(sum(dz * exp(rowSums(sapply(seq_along(i), function(k) dbinom(cbpp$incidence[i[k]], cbpp$size[i[k]], plogis(eta[k] + u), log = TRUE)))))) }
rowsOf <- split(seq_len(nrow(cbpp)), cbpp$herd); whole <- function(th) sum(sapply(rowsOf, herd, th = th))
fitH <- optim(c(-1.4, -1, -1.1, -1.6, log(.65)), function(th) -whole(th), method = "BFGS", control = list(reltol = 1e-15))
fitH <- optim(fitH$par, function(th) -whole(th), gr = function(th) -grad(whole, th), method = "BFGS", control = list(reltol = 1e-16))
bread <- solve(-hessian(whole, fitH$par)); U <- t(sapply(rowsOf, function(i) grad(function(th) herd(i, th), fitH$par)))
R <- bread %*% crossprod(U) %*% bread * 15 / (15 - 1)
put("herds", "estimate", fitH$par[1:4]); put("herds", "robust se", sqrt(diag(R))[1:4]); put("herds", "logLik", whole(fitH$par)); put("herds", "sd", exp(fitH$par[5]))
put("herds", "robust covariance", R)

# One changed group against others: the t test of lm over the groups' own changes.
change <- c(-.21, .04, -.03, .09, -.06, .01); changed <- c(1, 0, 0, 0, 0, 0)
m <- lm(change ~ changed); put("one changed", "estimate", coef(m)[2]); put("one changed", "limits", confint(m)[2, ])

# Days before a visit: 24 yards whose rain of each day is known; a spline of the lag with a constant, estimating equations with the factor G/(G-p).
suppressPackageStartupMessages(library(geepack))
set.seed(5); yards <- rep(1:24, each = 20); rain <- t(sapply(1:480, function(i) ifelse(runif(10) < .4, round(rexp(10, 1 / 6), 1), 0)))
true <- c(0, .01, .02, .03, .03, .02, .01, 0, 0, 0); shared <- rnorm(24, 0, .5)
lagged <- data.frame(yard = yards, case = rbinom(480, 1, plogis(-1.5 + rain %*% true * 1.5 + shared[yards])), round(rain, 1)); names(lagged)[3:12] <- paste0("day", 0:9)
write.csv(lagged, "lagged.csv", row.names = FALSE, quote = FALSE)
B <- ns(0:9, knots = c(2, 5), Boundary.knots = c(0, 9), intercept = TRUE); Z <- as.matrix(lagged[, 3:12]) %*% B
lagFit <- geeglm(case ~ Z, binomial, lagged, id = yard, corstr = "exchangeable", scale.fix = TRUE, control = geese.control(epsilon = 1e-12, maxit = 100))
W <- vcov(lagFit)[-1, -1] * 24 / (24 - 5); lagLine <- as.numeric(B %*% coef(lagFit)[-1]); lagSe <- sqrt(diag(B %*% W %*% t(B)))
put("lags", "log odds", lagLine); put("lags", "se", lagSe); put("lags", "any day F", t(coef(lagFit)[-1]) %*% solve(W) %*% coef(lagFit)[-1] / 4)
put("lags", "every day", c(sum(lagLine), sqrt(t(colSums(B)) %*% W %*% colSums(B))))

# Straight or not: a natural spline of an exposure, likelihood ratio of curve and line; estimating equations as above.
whole <- geeglm(case ~ ns(total, knots = c(15, 30), Boundary.knots = range(total)), binomial, transform(lagged, total = rowSums(lagged[, 3:12])), id = yard,
  corstr = "exchangeable", scale.fix = TRUE, control = geese.control(epsilon = 1e-12, maxit = 100))
total <- rowSums(lagged[, 3:12]); N <- ns(total, knots = c(15, 30), Boundary.knots = range(total)); V <- vcov(whole)[-1, -1] * 24 / (24 - 4)
C <- predict(N, c(10, 40)) - predict(N, c(20, 20)); put("shape", "log odds", C %*% coef(whole)[-1]); put("shape", "se", sqrt(diag(C %*% V %*% t(C))))
# Not straight: the second derivatives at the inner knots, which fix the curve beyond a line, are both 0.
bend <- function(x) (predict(N, x + .01) - 2 * predict(N, x) + predict(N, x - .01)) / 1e-4
K <- rbind(bend(15), bend(30)); put("shape", "curvature F", t(K %*% coef(whole)[-1]) %*% solve(K %*% V %*% t(K)) %*% (K %*% coef(whole)[-1]) / 2)

# Prevalence over an exposure, the rest as it is: logistic regression, clustered by yard with G/(G-p), delta method by numDeriv.
f <- geeglm(thrush ~ wet + hind, binomial, feet[order(feet$yard), ], id = factor(yard), corstr = "exchangeable", scale.fix = TRUE, control = geese.control(epsilon = 1e-12, maxit = 100))
V <- vcov(f) * 14 / (14 - 3); share <- function(b, w) mean(plogis(b[1] + b[2] * w + b[3] * feet$hind))
for (w in c(10, 30)) { p <- share(coef(f), w); g <- grad(function(b) qlogis(share(b, w)), coef(f)); se <- sqrt(g %*% V %*% g)
  put("curve", paste("at", w), plogis(qlogis(p) + c(0, -1, 1) * qt(.975, 11) * as.numeric(se))) }
d <- function(b) share(b, 30) - share(b, 10); g <- grad(d, coef(f)); se <- sqrt(g %*% V %*% g); put("curve", "difference", d(coef(f)) + c(0, -1, 1) * qt(.975, 11) * as.numeric(se))

# Held-out yards: logistic regression made without each.
chance <- function(formula) { p <- numeric(nrow(feet)); for (y in unique(feet$yard)) p[feet$yard == y] <- predict(glm(formula, binomial, feet[feet$yard != y, ]), feet[feet$yard == y, ], type = "response"); p }
p <- chance(thrush ~ wet + hind); put("held out", "brier", c(mean((feet$thrush - p)^2), mean((feet$thrush - chance(thrush ~ hind))^2), mean((feet$thrush - chance(thrush ~ 1))^2)))
put("held out", "calibration", c(coef(glm(feet$thrush ~ qlogis(p), binomial))[2], coef(glm(feet$thrush ~ offset(qlogis(p)), binomial))[1]))
