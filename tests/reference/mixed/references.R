# Reference fits for tests/estimate/fitMixedLogistic. Run here: Rscript references.R > references.csv  (some minutes)
# R 4.2.2, lme4 1.1-31, glmmTMB 1.1.5, numDeriv 2016.8-1.1. Data: ../cbpp.csv (lme4::cbpp) and ../sim-nested-feet.csv
# (synthetic, no real herd; set.seed(20261125), eta = -2 + 0.5 wet + 0.6 hind + N(0, 0.7) yard + N(0, 1) horse).
suppressPackageStartupMessages({ library(lme4); library(glmmTMB); library(numDeriv) })
cbpp <- read.csv("../cbpp.csv"); cbpp$period <- factor(cbpp$period); cbpp$herd <- factor(cbpp$herd)
feet <- read.csv("../sim-nested-feet.csv"); feet$yard <- factor(feet$yard); feet$horse <- factor(feet$horse)
cat("case,quantity,name,value\n")
put <- function(case, quantity, values, names = seq_along(values) - 1)
  cat(sprintf("%s,%s,%s,%.15g\n", case, quantity, names, as.numeric(values)), sep = "")
tight <- glmerControl("bobyqa", tolPwrss = 1e-13, optCtrl = list(rhoend = 1e-9, maxfun = 1e5))

# Laplace: glmmTMB for estimates and errors, lme4 at tight tolerance for the conditional modes and their spread.
laplace <- function(case, f, m, groups) {
  # Its optimiser stops early; a second round of Newton's method settles it.
  o <- f$obj; par <- f$fit$par
  for (i in 1:3) par <- par - solve(optimHess(par, o$fn, o$gr), as.vector(o$gr(par)))
  V <- solve(jacobian(o$gr, par))
  b <- names(par) == "beta"
  put(case, "estimate", par[b]); put(case, "se", sqrt(diag(V))[b]); put(case, "logLik", -o$fn(par))
  put(case, "sd", exp(par[!b]), groups); put(case, "seLogSd", sqrt(diag(V))[!b], groups)
  for (g in groups) {
    r <- ranef(m, condVar = TRUE)[[g]]
    put(case, paste("modes of", g), r[[1]], rownames(r)); put(case, paste("spread of", g), sqrt(as.vector(attr(r, "postVar"))), rownames(r))
  }
}
laplace("cbpp laplace", glmmTMB(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, binomial),
  glmer(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, binomial, control = tight), "herd")
laplace("feet laplace", glmmTMB(y ~ wet + hind + (1 | yard) + (1 | horse), feet, binomial),
  glmer(y ~ wet + hind + (1 | yard) + (1 | horse), feet, binomial, control = tight), c("yard", "horse"))
laplace("horse laplace", glmmTMB(y ~ wet + hind + (1 | horse), feet, binomial),
  glmer(y ~ wet + hind + (1 | horse), feet, binomial, control = tight), "horse")

# lme4's own quadrature, one random intercept.
agq <- function(case, f) {
  put(case, "estimate", fixef(f)); put(case, "sd", attr(VarCorr(f)[[1]], "stddev"), names(VarCorr(f)))
}
agq("cbpp agq", glmer(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, binomial, nAGQ = 25, control = tight))
agq("horse agq", glmer(y ~ wet + hind + (1 | horse), feet, binomial, nAGQ = 25, control = tight))

# Exact maximum likelihood, by summing the integrands over a fixed fine grid: no adaptation, no Gauss-Hermite.
z <- seq(-9, 9, by = 0.2); w <- dnorm(z) * 0.2
likelihood <- function(par, X, y, n, outer, inner) {
  p <- ncol(X); eta <- as.vector(X %*% par[1:p]); sd <- exp(par[-(1:p)])
  at <- if (is.null(outer)) 0 else sd[1] * z; su <- if (is.null(outer)) 1 else w; sh <- sd[length(sd)]
  pair <- split(seq_along(y), inner)
  per <- sapply(pair, function(k) {
    shift <- outer(at, sh * z, "+"); log <- matrix(0, nrow(shift), ncol(shift))
    for (r in k) log <- log + dbinom(y[r], n[r], plogis(eta[r] + shift), log = TRUE)
    log(exp(log) %*% w)
  })
  per <- matrix(per, length(at)); group <- if (is.null(outer)) seq_along(pair) else sapply(pair, function(k) outer[k[1]])
  sum(sapply(split(seq_along(pair), group), function(g) log(sum(su * exp(rowSums(per[, g, drop = FALSE]))))))
}
exact <- function(case, X, y, n, outer, inner, start, groups, at) {
  f <- function(par) -likelihood(par, X, y, n, outer, inner)
  o <- optim(start, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 500)); par <- o$par
  H <- hessian(f, par); for (i in 1:2) par <- par - solve(H, grad(f, par)); V <- solve(H); p <- ncol(X)
  put(case, "estimate", par[1:p]); put(case, "se", sqrt(diag(V))[1:p]); put(case, "logLik", -f(par))
  put(case, "sd", exp(par[-(1:p)]), groups); put(case, "seLogSd", sqrt(diag(V))[-(1:p)], groups)
  put(case, "covariance", V)
  # Population-averaged log odds and their delta-method error.
  marginal <- function(q) {
    s <- sqrt(sum(exp(2 * q[-(1:p)])))
    qlogis(integrate(function(x) plogis(sum(at * q[1:p]) + s * x) * dnorm(x), -Inf, Inf, rel.tol = 1e-11)$value)
  }
  g <- grad(marginal, par)
  put(case, "marginal", plogis(marginal(par))); put(case, "marginal se", sqrt(as.numeric(g %*% V %*% g)))
}
X <- model.matrix(~ period, cbpp)
exact("cbpp exact", X, cbpp$incidence, cbpp$size, NULL, cbpp$herd, c(-1.4, -1, -1.1, -1.6, log(.65)), "herd", c(1, 0, 1, 0))
X <- model.matrix(~ wet + hind, feet); one <- rep(1, nrow(feet))
exact("horse exact", X, feet$y, one, NULL, feet$horse, c(-2.1, .7, .3, log(1.3)), "horse", c(1, 1, 0))
exact("feet exact", X, feet$y, one, feet$yard, feet$horse, c(-2.1, .75, .3, log(.94), log(.84)), c("yard", "horse"), c(1, 1.2, 1))
