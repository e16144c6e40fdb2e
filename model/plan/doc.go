// Package plan reckons before the smelt what it takes to get what is wanted: how
// much ore for how sure a bloom, billet or bar, in how many smelts; what else is
// needed; and how one may charge on the day.
//
// Two figures are kept apart: the chance that a smelt gives no compact bloom at
// all, and the yield of those that give one (package learn). The chance of what is
// wanted is made of both; it rises with the ore and never passes the chance of a
// bloom. Needs are dry and less fines; what stands behind each is said with it.
// Nothing here knows the clock, the book or the screen.
package plan
