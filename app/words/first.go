package words

// Loading stands at the top until the program is there.
var Loading = say("Loading…")
