// Package rehearse is the room for a smelt on a simulated furnace: a source of
// looks, temperatures and levels that answers to the keys as the shaft solver
// says, on the one path that live and replay use.
package rehearse
