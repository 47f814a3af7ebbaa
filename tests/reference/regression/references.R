# Reference fits for tests/estimate. Run here: Rscript references.R > references.csv
# R 4.2.2 with stats, numDeriv 2016.8-1.1, MASS 7.3-58.2 (profile limits), geepack 1.3.9, lme4 1.1-31. Data: feet.csv beside this file.
# Cluster sandwiches and the Mancl-DeRouen correction are written out from their formulas, with full matrices.
suppressPackageStartupMessages({ library(MASS); library(geepack); library(lme4) })
d <- read.csv("feet.csv", stringsAsFactors = FALSE)
d$ground <- factor(d$ground, c("clay", "peat", "sand"))
d$stable <- paste(d$yard, d$horse)
angle <- 2 * pi * as.numeric(as.Date(d$visitDate)) / 365.25
d$s1 <- sin(angle); d$c1 <- cos(angle); d$s2 <- sin(2 * angle); d$c2 <- cos(2 * angle)
cat("case,quantity,name,value\n")
put <- function(case, quantity, values, names = seq_along(values) - 1)
  cat(sprintf("%s,%s,%s,%.15g\n", case, quantity, gsub(",", "/", names), as.numeric(values)), sep = "")

meat <- function(scores, id) crossprod(rowsum(scores, id))
sandwiched <- function(bread, scores, id, factor) bread %*% meat(scores, id) %*% bread * factor

linear <- function(case, f, ids = list()) {
  s <- summary(f)
  put(case, "estimate", coef(f)); put(case, "se", s$coefficients[, 2]); put(case, "p", s$coefficients[, 4])
  put(case, "limits", t(confint(f))); put(case, "residualSd", s$sigma); put(case, "rSquared", s$r.squared)
  put(case, "f", s$fstatistic); put(case, "logLik", logLik(f)); put(case, "aic", AIC(f)); put(case, "deviance", deviance(f))
  X <- model.matrix(f); w <- if (is.null(f$weights)) rep(1, nrow(X)) else f$weights
  for (id in names(ids)) {
    g <- d[[ids[[id]]]]; G <- length(unique(g)); n <- nrow(X); p <- ncol(X)
    V <- sandwiched(solve(crossprod(X, w * X)), X * (w * residuals(f)), g, G / (G - 1) * (n - 1) / (n - p))
    put(case, paste0("se by ", id), sqrt(diag(V)))
    put(case, paste0("limits by ", id), rbind(coef(f) - qt(.975, G - 1) * sqrt(diag(V)), coef(f) + qt(.975, G - 1) * sqrt(diag(V))))
  }
}
linear("linear", lm(toeAngleDeg ~ hind + age + ground, d), list(yard = "yard", horse = "stable"))
linear("linear weighted", lm(toeAngleDeg ~ hind + wet + hind:wet + ground:wet + s1 + c1, d, weights = weight), list(yard = "yard"))
linear("linear origin", lm(toeAngleDeg ~ 0 + wet + age, d))

glmOut <- function(case, f, ids = list(), profiled = TRUE) {
  s <- summary(f, dispersion = 1)
  put(case, "estimate", coef(f)); put(case, "se", s$coefficients[, 2]); put(case, "p", s$coefficients[, 4])
  put(case, "wald limits", t(confint.default(f))); put(case, "deviance", deviance(f)); put(case, "nullDeviance", f$null.deviance)
  put(case, "logLik", logLik(f)); put(case, "aic", AIC(f)); put(case, "dispersion", sum(residuals(f, "pearson")^2) / f$df.residual)
  if (profiled) {
    # The limits solve "profile deviance = minimum + 3.84" exactly; confint only interpolates between profiled points.
    put(case, "profile limits", exactProfile(f))
  }
  X <- model.matrix(f); r <- residuals(f, "working") * f$weights
  for (id in names(ids)) {
    g <- d[[ids[[id]]]][as.integer(rownames(X))]; G <- length(unique(g))
    V <- sandwiched(solve(crossprod(X, f$weights * X)), X * r, g, G / (G - 1))
    put(case, paste0("se by ", id), sqrt(diag(V)))
    put(case, paste0("limits by ", id), rbind(coef(f) - qt(.975, G - 1) * sqrt(diag(V)), coef(f) + qt(.975, G - 1) * sqrt(diag(V))))
  }
}
exactProfile <- function(f) {
  X <- model.matrix(f); o <- if (is.null(f$offset)) rep(0, nrow(X)) else f$offset
  y <- f$y; w <- f$prior.weights; se <- sqrt(diag(vcov(f)))
  sapply(seq_len(ncol(X)), function(j) sapply(c(-1, 1), function(side) {
    rise <- function(b) suppressWarnings(glm.fit(X[, -j, drop = FALSE], y, w, offset = o + X[, j] * b, family = f$family, control = glm.control(1e-14, 100)))$deviance - deviance(f) - qchisq(.95, 1)
    uniroot(rise, sort(coef(f)[j] + side * se[j] * c(.5, 4)), tol = 1e-12)$root
  }))
}
tight <- glm.control(1e-14, 100)
glmOut("logistic", glm(thrush ~ I(wet / 10) + hind + ground, binomial, d, control = tight), list(yard = "yard", horse = "stable"))
some <- d[d$feetExamined > 0, ]
glmOut("logistic counts", glm(cbind(casesFound, feetExamined - casesFound) ~ wet + hind + offset(known), binomial, some, weights = times, control = tight), list(yard = "yard"))
glmOut("logistic season", glm(thrush ~ s1 + c1 + s2 + c2 + ground + wet:ground, binomial, d, control = tight))
glmOut("poisson", glm(lost ~ shod + wet + hind + offset(log(horseDays)), poisson, d, control = tight), list(yard = "yard", horse = "stable"))
glmOut("poisson weighted", glm(lost ~ ground + shod:wet + offset(known), poisson, d, weights = times, control = tight), list(yard = "yard"))

# The teaching data beside this folder, again with tight control: by default glm takes its errors one iteration before the last.
read <- function(file) read.csv(file.path("..", file))
births <- transform(read("birthwt.csv"), race = factor(race), ptd = ptl > 0, visits = factor(pmin(ftv, 2)))
glmOut("birthwt smoke", glm(low ~ smoke, binomial, births, control = tight))
glmOut("birthwt race", glm(low ~ lwt + race, binomial, births, control = tight), profiled = FALSE)
glmOut("birthwt seven", glm(low ~ age + lwt + race + smoke + ptl + ht + ui, binomial, births, control = tight), profiled = FALSE)
glmOut("birthwt recoded", glm(low ~ age + lwt + race + smoke + ptd + ht + ui + visits, binomial, births, control = tight), profiled = FALSE)
glmOut("infert", glm(case ~ spontaneous + induced, binomial, read("infert.csv"), control = tight), profiled = FALSE)
glmOut("cbpp", glm(cbind(incidence, size - incidence) ~ factor(period), binomial, read("cbpp.csv"), control = tight), profiled = FALSE)
glmOut("nested feet", glm(y ~ wet + hind, binomial, read("sim-nested-feet.csv"), control = tight), profiled = FALSE)

geeOut <- function(case, formula, data, id, corstr = "exchangeable", fixed = TRUE, weights = NULL) {
  data <- data[order(data[[id]]), ]
  data$id <- as.integer(factor(data[[id]])); data$w <- if (is.null(weights)) 1 else data[[weights]]
  f <- geeglm(formula, id = id, data = data, family = binomial, corstr = corstr, scale.fix = fixed, weights = w, control = geese.control(epsilon = 1e-13, maxit = 500))
  put(case, "estimate", coef(f)); put(case, "se", sqrt(diag(f$geese$vbeta))); put(case, "modelSe", sqrt(diag(f$geese$vbeta.naiv)))
  put(case, "p", summary(f)$coefficients[, 4]); put(case, "covariance", f$geese$vbeta)
  put(case, "phi", f$geese$gamma); if (corstr != "independence") put(case, "alpha", f$geese$alpha)
  f
}
# Mancl & DeRouen (2001): residuals of cluster i multiplied by (I - H_ii)^-1, H_ii = D_i M D_i' V_i^-1, M the model-based covariance.
manclDeRouen <- function(f, id) {
  X <- model.matrix(f); mu <- fitted(f); a <- mu * (1 - mu); alpha <- if (length(f$geese$alpha)) f$geese$alpha else 0
  parts <- lapply(split(seq_along(id), id), function(k) {
    n <- length(k); D <- a[k] * X[k, , drop = FALSE]; A <- diag(sqrt(a[k]), n)
    V <- A %*% (diag(1 - alpha, n) + alpha) %*% A
    list(D = D, Vi = solve(V), r = f$y[k] - mu[k])
  })
  M <- solve(Reduce(`+`, lapply(parts, function(z) t(z$D) %*% z$Vi %*% z$D)))
  B <- Reduce(`+`, lapply(parts, function(z) {
    u <- t(z$D) %*% z$Vi %*% solve(diag(length(z$r)) - z$D %*% M %*% t(z$D) %*% z$Vi, z$r); u %*% t(u)
  }))
  M %*% B %*% M
}
model <- thrush ~ I(wet / 10) + hind + ground
f <- geeOut("gee yard", model, d, "yard")
put("gee yard", "manclDeRouen se", sqrt(diag(manclDeRouen(f, f$id))))
b <- coef(f)[4:5]; put("gee yard", "wald ground", t(b) %*% solve(vcov(f)[4:5, 4:5]) %*% b)
geeOut("gee yard estimated", model, d, "yard", fixed = FALSE) -> f
f <- geeOut("gee horse", model, d, "stable")
f <- geeOut("gee independence", model, d, "yard", "independence")
put("gee independence", "manclDeRouen se", sqrt(diag(manclDeRouen(f, f$id))))
f <- geeOut("gee weighted", model, d, "yard", weights = "times")
f <- geeOut("gee weighted estimated", model, d, "yard", fixed = FALSE, weights = "times")
each <- some[rep(seq_len(nrow(some)), some$feetExamined), ]
each$case <- unlist(mapply(function(k, n) rep(1:0, c(k, n - k)), some$casesFound, some$feetExamined))
f <- geeOut("gee counts", case ~ wet + hind, each, "yard")
cattle <- read("cbpp.csv")
animals <- cattle[rep(seq_len(nrow(cattle)), cattle$size), ]
animals$case <- unlist(mapply(function(k, n) rep(1:0, c(k, n - k)), cattle$incidence, cattle$size))
f <- geeOut("gee cbpp", case ~ factor(period), animals, "herd")

mixed <- function(case, formula, REML, data = d, group = "yard") {
  parts <- lFormula(formula, data, REML = REML)
  criterion <- do.call(mkLmerDevfun, parts)
  first <- optimizeLmer(criterion, "bobyqa", control = list(rhoend = 1e-11))
  # a second look for the optimum from where the first ended
  lower <- environment(criterion)$lower
  second <- nlminb(first$par, criterion, lower = lower, control = list(rel.tol = 1e-15, x.tol = 1e-13, xf.tol = 0, iter.max = 1000, eval.max = 5000))
  best <- if (second$objective <= first$fval) second$par else first$par
  f <- mkMerMod(environment(criterion), list(par = best, fval = criterion(best), conv = 0, message = NULL), parts$reTrms, fr = parts$fr)
  v <- as.data.frame(VarCorr(f))
  put(case, "estimate", fixef(f)); put(case, "se", sqrt(diag(as.matrix(vcov(f)))))
  put(case, "criterion", if (REML) REMLcrit(f) else deviance(f)); put(case, "logLik", logLik(f)); put(case, "aic", AIC(f))
  put(case, "sd", v$sdcor, gsub(",", "/", paste(v$grp, v$var1, v$var2)))
  modes <- ranef(f, condVar = TRUE)
  for (g in names(modes)) {
    m <- modes[[g]]; post <- attr(m, "postVar")
    each <- if (is.list(post)) lapply(post, function(x) x[1, 1, ]) else lapply(seq_len(dim(post)[1]), function(k) post[k, k, ])
    for (k in seq_along(m)) {
      put(case, paste("mode", g, names(m)[k]), m[[k]], rownames(m))
      put(case, paste("spread", g, names(m)[k]), sqrt(each[[k]]), rownames(m))
    }
  }
}
for (REML in c(TRUE, FALSE)) {
  kind <- if (REML) "reml" else "ml"
  mixed(paste("mixed nested", kind), toeAngleDeg ~ hind + age + ground + (1 | yard / horse), REML)
  mixed(paste("mixed slope", kind), toeAngleDeg ~ hind + wet + (wet | yard), REML)
  mixed(paste("mixed slope apart", kind), toeAngleDeg ~ hind + wet + (wet || yard), REML)
  mixed(paste("mixed slope bound", kind), toeAngleDeg ~ hind + wet + (hind | yard), REML)
  mixed(paste("mixed slope none", kind), toeAngleDeg ~ hind + wet + (hind || yard), REML)
}

# Wald limits of spreads in natural parameters (Pinheiro & Bates 2000, section 2.4.3): logarithms of SDs and log((1 + r) / (1 - r)). Curvature
# by numDeriv 2016.8-1.1 of the likelihood written out with the full covariance matrix of the rows, at the optimum of lme4.
bounds <- function(case, formula, natural, back, covariance, REML) {
  f <- lmer(formula, d, REML = REML, control = lmerControl("bobyqa", optCtrl = list(rhoend = 1e-11), calc.derivs = FALSE))
  X <- getME(f, "X"); y <- getME(f, "y")
  logLikelihood <- function(x) {
    V <- covariance(x); C <- chol(V); A <- backsolve(C, X, transpose = TRUE); b <- backsolve(C, y, transpose = TRUE)
    q <- qr(A); r <- sum(qr.resid(q, b)^2)
    -sum(log(diag(C))) - r / 2 - if (REML) sum(log(abs(diag(qr.R(q))))) else 0
  }
  x <- optim(natural(f), logLikelihood, method = "BFGS", control = list(fnscale = -1, reltol = 1e-14))$par
  se <- sqrt(diag(solve(-numDeriv::hessian(logLikelihood, x))))
  put(case, "limits", rbind(back(x - qnorm(.975) * se), back(x + qnorm(.975) * se)), rep(names(x), each = 2))
  put(case, "at", back(x), names(x))
}
same <- function(a) outer(a, a, `==`) + 0
sdOf <- function(f) as.data.frame(VarCorr(f))$sdcor
for (REML in c(TRUE, FALSE)) {
  bounds(paste("bounds nested", if (REML) "reml" else "ml"), toeAngleDeg ~ hind + wet + (1 | yard / horse),
    function(f) setNames(log(sdOf(f)), c("horse", "yard", "residual")), exp,
    function(x) exp(2 * x[1]) * same(d$stable) + exp(2 * x[2]) * same(d$yard) + diag(exp(2 * x[3]), nrow(d)), REML)
}
bounds("bounds slope", toeAngleDeg ~ hind + wet + (wet | yard),
  function(f) setNames(c(log(sdOf(f)[1:2]), 2 * atanh(sdOf(f)[3]), log(sdOf(f)[4])), c("yard", "wet", "correlation", "residual")),
  function(x) c(exp(x[1:2]), tanh(x[3] / 2), exp(x[4])),
  function(x) {
    s <- exp(x[1:2]); r <- tanh(x[3] / 2)
    same(d$yard) * (s[1]^2 + r * s[1] * s[2] * outer(d$wet, d$wet, `+`) + s[2]^2 * outer(d$wet, d$wet)) + diag(exp(2 * x[4]), nrow(d))
  }, TRUE)
