# Teaching data that come with R packages, written out as CSV. Run in this folder: Rscript export-teaching-data.R
# R 4.2.2 (datasets), MASS 7.3-58.2, lme4 1.1-31. Anonymised and decades old, or of no human subjects; only the columns the tests use.
out <- function(data, file) write.csv(data, file, row.names = FALSE, quote = FALSE)
out(MASS::birthwt[c("low", "age", "lwt", "race", "smoke", "ptl", "ht", "ui", "ftv")], "birthwt.csv")
out(datasets::infert[c("case", "spontaneous", "induced")], "infert.csv")
out(lme4::sleepstudy, "sleepstudy.csv")
out(lme4::cbpp, "cbpp.csv")
out(lme4::Pastes, "pastes.csv")
out(lme4::Dyestuff, "dyestuff.csv")
out(lme4::Dyestuff2, "dyestuff2.csv")
ohio <- geepack::ohio
child <- aggregate(cbind(pattern = resp) ~ id + smoke, ohio, paste, collapse = "")
out(as.data.frame(table(pattern = child$pattern, smoke = child$smoke), responseName = "children"), "ohio.csv")
out(datasets::iris, "iris.csv")
