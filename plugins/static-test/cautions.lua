-- What to mind before a rod is loaded. None of it says that a load is safe.
return {
  "The blank maker's limits come first. Not known: ask, and load no more than you would fish.",
  "Eye protection, for everybody in the room.",
  "Tie a catch line to the weight, and hang it low: it may fall a hand's breadth, no more.",
  "Nobody in line with the rod or under it. Cover hooks; better, use none.",
  "Butt at most 60° above level: a blank lifted at a high angle breaks without warning.",
  "Look for room overhead: lamps, fans, wires. Outdoors never within 30 m of overhead lines, nor in thunder.",
  "Load slowly, in stages; stop at a crack, a flat spot or a fold. Unload by lifting the weight, never cut the line.",
  "These figures describe geometry and estimates. They do not show that rod, joint or line will hold.",
}
