// Package house folds the stream of the house, and what the smelts used, into
// what there is: lots with what came, went and is left, furnaces in their dated
// versions, measures, plans, pieces, settings, and what a person wants kept.
//
// It is a pure fold, as package fold is of a smelt: entries in force, in the
// order in which things happened, so that a late, struck or amended entry needs
// nothing of its own.
//
// What there is is reckoned dry. A weight is turned to its dry mass by the
// moisture said with it, else by the lot's, else by the first that is found within
// days of it; a lot that gets wet later so keeps what there is of it, and needs are compared with stores dry against dry. Screens
// show both, by Lot.Weight.
//
// Nothing is refused. An amount that nobody knows ("some") leaves a lot known
// as at least or at most; a count sets it right. A lot below nothing says by how
// much.
package house
