// Package lot says what is known of a lot of the stores beyond what there is of it: the
// iron in it and what it can give up, whether it was roasted through, how much of it is
// fines, and what would firm that up most. It is reckoned from the lot's own assay and
// deeds; where there is none of these, from what is usual, which is then marked assumed.
package lot
