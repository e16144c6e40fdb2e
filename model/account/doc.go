// Package account tells where every kilogram of iron went in a smelt, as far
// as what was weighed and assayed can tell.
//
// A [Smelt] holds the masses that went in and came out with what each is made
// of; [Of] makes an [Account] of it: rows of iron and silica with their spread,
// carbon and total mass in and out, yields each with its base, and a verdict
// that reaches no further than what is known twice. Below it stands plain data
// reconciliation: a [Problem] of quantities and balances, solved by iterated
// weighted least squares (gonum), with the tests for gross errors.
//
// Everything is pure: values in, values out; masses in kg, shares as parts of
// one, spreads as standard deviations.
package account
