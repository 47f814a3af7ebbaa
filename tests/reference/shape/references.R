# Reference values for the shape statistics. Run here: Rscript references.R > references.csv
# It also writes shapes.csv, invented landmarks. R 4.2.2 (stats, grDevices) and MASS 7.3-58.2. One row a value; values of one case stand in order.
suppressPackageStartupMessages(library(MASS))
cat("case,value\n")
put <- function(case, values) cat(sprintf("%s,%.16g\n", case, as.numeric(values)), sep = "")

# Invented outlines: 30 pairs of 16 landmarks of 15 horses, a front and a hind foot each, turned, moved and scaled at random.
set.seed(20261125)
k <- 16
turn <- seq(0, 2 * pi, length.out = k + 1)[-(k + 1)]
foot <- function(hind, own) {
  r <- 1 + 0.03 * own * cos(2 * turn) + rnorm(k, 0, 0.01)
  z <- complex(real = r * cos(turn) * (1 + 0.05 * hind), imaginary = r * sin(turn) * (1.04 - 0.03 * hind))
  size <- runif(1, 50, 75)
  z * size * exp(1i * runif(1, -0.6, 0.6)) + complex(real = rnorm(1, 0, 30), imaginary = rnorm(1, 0, 30))
}
shapes <- list()
rows <- NULL
for (pair in 1:30) {
  horse <- (pair - 1) %/% 2 + 1
  if (pair %% 2 == 1) own <- rnorm(1)
  for (hind in 0:1) {
    z <- round(foot(hind, own), 4)
    shapes[[length(shapes) + 1]] <- z
    rows <- rbind(rows, data.frame(pair, horse, hind, landmark = 1:k, x = Re(z), y = Im(z)))
  }
}
write.csv(rows, "shapes.csv", row.names = FALSE, quote = FALSE)

# Moments of outlines, triangle by triangle from the first point; hull by chull.
moments <- function(z) {
  x <- Re(z); y <- Im(z); n <- length(z); total <- numeric(6)
  for (i in 2:(n - 1)) {
    j <- c(1, i, i + 1); X <- x[j]; Y <- y[j]
    area <- det(cbind(1, X, Y)) / 2
    total <- total + area * c(1, mean(X), mean(Y), (sum(Y)^2 + sum(Y^2)) / 12, (sum(X)^2 + sum(X^2)) / 12, (sum(X) * sum(Y) + sum(X * Y)) / 12)
  }
  a <- total[1]; cx <- total[2] / a; cy <- total[3] / a
  m <- c(total[4] - a * cy^2, total[5] - a * cx^2, total[6] - a * cx * cy) * sign(a)
  e <- eigen(matrix(c(m[1], m[3], m[3], m[2]), 2))$values
  h <- chull(x, y); H <- z[h]
  shoelace <- function(w) abs(sum(Re(w) * Im(c(w[-1], w[1])) - Im(w) * Re(c(w[-1], w[1]))) / 2)
  around <- function(w) sum(Mod(w - c(w[-1], w[1])))
  c(abs(a), around(z), cx, cy, m, e, abs(a) / shoelace(H), around(H) / around(z))
}
for (i in c(1, 2)) put(paste("moments", i), moments(shapes[[i]]))
dented <- shapes[[2]]
dented[5] <- mean(dented) + 0.5 * (dented[5] - mean(dented)) # landmark 5 half way to the middle
put("moments dented", moments(dented))

# Circularity of ellipses: circumference by quadrature.
for (axes in list(c(2, 1), c(3, 2), c(5, 4), c(10, 1))) {
  P <- 4 * integrate(function(t) sqrt((axes[1] * sin(t))^2 + (axes[2] * cos(t))^2), 0, pi / 2, rel.tol = 1e-13)$value
  put(paste("ellipse", axes[1], axes[2]), c(P, 4 * pi * pi * axes[1] * axes[2] / P^2))
}

# Elliptic Fourier coefficients by their definition, with 40-point Gauss-Legendre quadrature on each edge.
legendre <- eigen(local({ b <- (1:39) / sqrt(4 * (1:39)^2 - 1); m <- matrix(0, 40, 40); m[cbind(1:39, 2:40)] <- m[cbind(2:40, 1:39)] <- b; m }))
node <- legendre$values; weight <- 2 * legendre$vectors[1, ]^2
fourier <- function(z, n) {
  w <- c(z, z[1]); step <- Mod(diff(w)); t <- c(0, cumsum(step)); total <- sum(step)
  edge <- function(f, part) sum(sapply(seq_along(step), function(i) {
    share <- (node + 1) / 2; p <- w[i] + (w[i + 1] - w[i]) * share
    step[i] / 2 * sum(weight * part(p) * f(2 * pi * n * (t[i] + share * step[i]) / total))
  }))
  2 / total * c(edge(cos, Re), edge(sin, Re), edge(cos, Im), edge(sin, Im))
}
trapezoid <- c(0 + 0i, 10 + 0i, 8 + 5i, 3 + 5i)
put("fourier trapezoid", sapply(1:6, function(n) fourier(trapezoid, n)))
put("fourier means trapezoid", fourier(trapezoid, 0)[c(1, 3)] / 2)
put("fourier 2", sapply(1:10, function(n) fourier(shapes[[2]], n)))

# Procrustes by singular values, with and without a mirror.
xy <- function(z) cbind(Re(z), Im(z))
fit <- function(A, B, reflection) {
  a <- scale(A, scale = FALSE); b <- scale(B, scale = FALSE); sa <- sqrt(sum(a^2)); sb <- sqrt(sum(b^2))
  s <- svd(t(b) %*% a); D <- diag(2)
  if (!reflection) D[2, 2] <- sign(det(s$u %*% t(s$v)))
  R <- s$u %*% D %*% t(s$v); like <- sum(s$d * diag(D)) / (sa * sb); scale <- like * sa / sb
  shift <- colMeans(A) - scale * colMeans(B) %*% R
  c(1 - like^2, sqrt(1 - like^2), sqrt(2 - 2 * like), acos(like), sum((A - scale * B %*% R - rep(1, nrow(A)) %*% shift)^2), scale, R, shift, sa, sb)
}
four <- cbind(c(1, 11.5, 8.2, 3.1), c(1, 2, 6.9, 5.6))
hooked <- list(cbind(c(1, 1, 1, 2), c(3, 2, 1, 1)), cbind(c(4, 4, 4, 2), c(-2, -4, -6, -6)))
put("procrustes four", fit(xy(trapezoid), four, FALSE))
put("procrustes hooked", fit(hooked[[1]], hooked[[2]], FALSE))
put("procrustes hooked mirrored", fit(hooked[[1]], hooked[[2]], TRUE)[c(5, 6, 7:10)])
put("procrustes triangles", fit(cbind(c(0, 1, .5), c(0, 0, sqrt(3) / 2)), cbind(c(0, 4, 0), c(0, 0, 3)), FALSE))
put("procrustes 1 2", fit(xy(shapes[[1]]), xy(shapes[[2]]), FALSE))

# Generalised Procrustes: sizes 1, turned onto their mean; then principal components by prcomp.
units <- lapply(shapes, function(z) { z <- z - mean(z); z / sqrt(sum(Mod(z)^2)) })
onto <- function(target, z) { p <- sum(Conj(z) * target); z * p / Mod(p) }
centre <- units[[1]]
for (i in 1:200) { aligned <- lapply(units, function(z) onto(centre, z)); centre <- Reduce(`+`, aligned) / length(aligned) }
p <- sum(Conj(centre) * units[[1]]); home <- p / Mod(p)
aligned <- lapply(aligned, function(z) z * home); centre <- centre * home
put("general mean", rbind(Re(centre), Im(centre)))
put("general aligned 17", rbind(Re(aligned[[17]]), Im(aligned[[17]])))
put("general ss", sum(sapply(aligned, function(z) sum(Mod(z - centre)^2))))
pca <- prcomp(t(sapply(aligned, function(z) c(rbind(Re(z), Im(z))))))
put("components variance", pca$sdev[1:8]^2)
for (j in 1:3) {
  sign <- sign(pca$rotation[which.max(abs(pca$rotation[, j])), j])
  put(paste("component", j), sign * pca$rotation[, j])
  put(paste("scores", j), sign * pca$x[, j])
}

# Front against hind within horses: every horse once; all swaps of the first 8 horses.
gap <- sapply(1:15, function(h) { i <- 4 * (h - 1); (aligned[[i + 2]] - aligned[[i + 1]] + aligned[[i + 4]] - aligned[[i + 3]]) / 2 })
put("difference distance", sqrt(sum(Mod(rowMeans(gap))^2)))
a8 <- units[1:32]; centre <- a8[[1]]
for (i in 1:200) { al <- lapply(a8, function(z) onto(centre, z)); centre <- Reduce(`+`, al) / 32 }
# Fronts of horses 1-4 against fronts of horses 5-8: no true difference.
null <- sapply(1:4, function(h) { i <- 4 * (h - 1); (al[[i + 17]] - al[[i + 1]] + al[[i + 19]] - al[[i + 3]]) / 2 })
signs <- as.matrix(expand.grid(rep(list(c(-1, 1)), 4)))
far <- apply(signs, 1, function(s) sqrt(sum(Mod(null %*% s / 4)^2)))
seen <- sqrt(sum(Mod(rowMeans(null))^2))
put("null distance", seen)
put("null p", mean(far >= seen * (1 - 1e-12)))
put("null chance", mean(far))

# Linear discriminants of iris by MASS::lda.
put_lda <- function(name, formula, data, prior = NULL) {
  arguments <- list(formula, data = data); if (!is.null(prior)) arguments$prior <- prior
  model <- do.call(lda, arguments); pred <- predict(model, data)
  cv <- do.call(lda, c(arguments, CV = TRUE)); y <- model.frame(formula, data)[[1]]
  put(paste(name, "svd"), model$svd)
  put(paste(name, "trace"), model$svd^2 / sum(model$svd^2))
  put(paste(name, "coefficients"), model$scaling)
  put(paste(name, "confusion"), t(table(y, pred$class)))
  put(paste(name, "confusion held out"), t(table(y, cv$class)))
  put(paste(name, "posterior"), t(pred$posterior))
  put(paste(name, "posterior held out"), t(cv$posterior))
  put(paste(name, "scores"), pred$x[, 1])
}
all4 <- Species ~ Sepal.Length + Sepal.Width + Petal.Length + Petal.Width
put_lda("iris", all4, iris)
put_lda("iris sepals", Species ~ Sepal.Length + Sepal.Width, iris)
put_lda("iris priors", all4, iris, c(.2, .5, .3))
two <- droplevels(iris[iris$Species != "setosa", ])
put_lda("iris two", all4, two)
w <- cov(two[1:50, 1:4]) / 2 + cov(two[51:100, 1:4]) / 2
put("iris two d2", mahalanobis(colMeans(two[1:50, 1:4]), colMeans(two[51:100, 1:4]), w))
for (test in c("Wilks", "Pillai")) put(paste("iris", test), summary(manova(as.matrix(iris[1:4]) ~ Species, iris), test)$stats[1, c(2:6)])
unequal <- iris[c(1:50, 51:80, 101:140), ]
put_lda("iris unequal", all4, unequal)
put("iris unequal Wilks", summary(manova(as.matrix(unequal[1:4]) ~ Species, unequal), "Wilks")$stats[1, c(2:6)])
# Held out ten rows at a time: rows 1, 11, 21, ... together.
fold <- (seq_len(150) - 1) %% 10
held <- matrix(0, 150, 3)
for (f in 0:9) held[fold == f, ] <- predict(lda(all4, iris[fold != f, ], prior = rep(1 / 3, 3)), iris[fold == f, ])$posterior
put("iris folds posterior held out", t(held))

# Logistic regression of virginica among versicolor and virginica, held out row by row and ten folds.
two$virginica <- as.numeric(two$Species == "virginica")
logit <- virginica ~ Sepal.Length + Sepal.Width + Petal.Length
run <- function(data) glm(logit, binomial, data, control = glm.control(epsilon = 1e-14, maxit = 100))
put("logit coefficients", coef(run(two)))
put("logit probabilities", fitted(run(two)))
put("logit held out", sapply(1:100, function(i) predict(run(two[-i, ]), two[i, ], type = "response")))
fold <- (seq_len(100) - 1) %% 10
put("logit folds held out", sapply(1:100, function(i) predict(run(two[fold != fold[i], ]), two[i, ], type = "response")))

# Percentiles, and ranks of their limits.
put("quantiles sepal", quantile(iris$Sepal.Length, c(.025, .1, .5, .9, .975), type = 7))
for (n in c(20, 39, 120, 150, 1000)) for (p in c(.025, .1, .5, .975)) for (level in c(.9, .95)) {
  put(sprintf("ranks %g %g %g", n, p, level), c(qbinom((1 - level) / 2, n, p), qbinom((1 + level) / 2, n, p) + 1))
}
