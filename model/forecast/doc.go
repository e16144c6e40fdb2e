// Package forecast says when the next charge is due, how sure that is, and how
// well the same rule would have done on smelts that are over.
//
// The forecast comes from this smelt's own intervals between charges, and from
// when the air was changed. On published logs no measure, ore or phase foretold
// the next interval better than the smelt's own level does; and if intervals are
// a level and chance, even that level known exactly leaves six sevenths of the
// error of the mean of the last three. So the worth lies in an honest band: on a
// steady smelt the next charge is known to within about 15 %, on an unsteady one
// to within 30 %.
//
// [Next] and [Score] walk the same intervals by the same rule: interval (what
// counts as one), pace (the level and its band), doubt (what makes it unsure),
// hindcast (the score). Figures that were fitted stand in fitted.go, and a test
// fits them again.
package forecast
