// Package learn holds what a crew's own smelts, and where there are none the
// published ones, teach about the next: how much bloom a kilogram of ore will
// give, and how likely it is that there will be no compact bloom at all. The two
// are never mixed: a smelt that failed says nothing about the yield of one that
// did not.
//
// A yield is kg of bloom per kg of ore dry (as charged less its water); the
// bloom is cold, loose slag knocked off, not yet compacted. Of 41 published
// smelts with 9 to 60 kg of ore nothing that was written down beforehand (team,
// size of the furnace, air, ratio, grade, hours) foretells the yield better than
// "about a fifth of the ore", but for one thing: the same crew on the same mix
// of ore scatters less. So what is learnt belongs to the crew and the [Mix].
package learn
