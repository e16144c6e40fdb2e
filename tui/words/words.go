// Package words holds what the screens say of their own: what keys do, what lists
// and fields ask, what the foot answers. What is said of figures, events, warnings
// and of the book stands in model/words.
//
// The rules are the same in both: say what happened, what it means, what to do, in
// that order and in as few words as that takes. Use the trade's words and plain
// English; no word a helper at the furnace would have to ask about. Every number
// has its unit. A sentence of the screen has no full stop. Chemistry stands one key
// deeper. Nothing is said by colour alone, so each state has its word here.
package words
