// Package screen is what the screens share: what a screen is, what it may see
// (Shared), what it may ask for (Effect), and the parts that screens are made of:
// lists, questions, fields, tables, key maps. It imports no screen.
package screen
