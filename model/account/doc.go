// Package account is the room for the days after: every kilogram of iron from
// the ore through bloom, fragments and slag to the billet and the bar. It will
// read what is weighed (entry.Weigh) and each heat in the forge
// (entry.ForgeHeat); both are kept from the first version on.
package account
