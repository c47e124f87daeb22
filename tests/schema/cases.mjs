// Small designs by hand. `refused`: where the first complaint must point, and the name it must give.

const design = (rest) => ({ format: "withy/1", ...rest });
const blank = (section) => design({ blank: { sections: [{ id: "a", ...section }] } });

export const cases = [
  { name: "nothing but the format", design: design({}) },
  { name: "one unit", design: blank({ length: { mm: 1980 } }) },
  { name: "a unit with tolerance and source", design: blank({ length: { inch: 78, plus_minus: 0.1, source: "MEASURED" } }) },
  { name: "lowerCamelCase names", design: design({ tipTop: { id: "t", tubeBore: { in64: 5.5 } }, guideModels: [] }) },
  { name: "lowerCamelCase units", design: design({ adhesives: [{ id: "a", pack: { flOz: 8 }, mix: { density: { gPerCm3: 1.1 } } }] }) },
  { name: "a known word", design: design({ intent: { technique: "casting" } }) },
  { name: "a word of one's own", design: design({ intent: { technique: "other: ice jigging" } }) },
  { name: "data of plugins", design: design({ extensions: { club: { any: [1, "two", { three: null }] } } }) },
  { name: "a value outside the plausible range is not the schema's business", design: blank({ length: { mm: 87 } }) },
  { name: "a place", design: design({ wraps: [{ id: "w", place: { from_butt: { mm: 300 } } }] }) },
  { name: "the inside may be unknown", design: blank({ taper: { stations: [{ at: { mm: 0 }, outer: { mm: 12 } }] } }) },

  { name: "no format", design: {}, refused: { path: "", names: "format" } },
  { name: "another format", design: { format: "withy/9" }, refused: { path: "/format" } },
  { name: "a misspelt name", design: design({ tip_topp: {} }), refused: { path: "", names: "tip_topp" } },
  { name: "a misspelt name, deep", design: blank({ lenght: { mm: 1 } }), refused: { path: "/blank/sections/0", names: "lenght" } },
  { name: "no unit", design: blank({ length: {} }), refused: { path: "/blank/sections/0/length", names: "mm" } },
  { name: "no unit beside a tolerance", design: blank({ length: { plus_minus: 1 } }), refused: { path: "/blank/sections/0/length", names: "mm" } },
  { name: "two units", design: blank({ length: { mm: 1980, inch: 78 } }), refused: { path: "/blank/sections/0/length/inch" } },
  { name: "two units, the second in camel case", design: design({ adhesives: [{ id: "a", pack: { ml: 1, flOz: 8 } }] }), refused: { path: "/adhesives/0/pack/flOz" } },
  { name: "a bare number", design: blank({ length: 1980 }), refused: { path: "/blank/sections/0/length" } },
  { name: "a number as text", design: blank({ length: { mm: "1980" } }), refused: { path: "/blank/sections/0/length/mm" } },
  { name: "wall and inner diameter", design: blank({ taper: { stations: [{ wall: { mm: 1 }, inner: { mm: 9 } }] } }), refused: { path: "/blank/sections/0/taper/stations/0/inner" } },
  { name: "a place without an origin", design: design({ wraps: [{ id: "w", place: { gap: { mm: 1 } } }] }), refused: { path: "/wraps/0/place", names: "from_butt" } },
  { name: "one thing where a list belongs", design: design({ guides: { id: "g" } }), refused: { path: "/guides" } },
  { name: "a list where one thing belongs", design: design({ tip_top: [] }), refused: { path: "/tip_top" } },
  { name: "an unknown value of a closed list", design: blank({ length: { mm: 1, source: "GUESSED" } }), refused: { path: "/blank/sections/0/length/source" } },
  { name: "a word that is no text", design: design({ intent: { technique: 3 } }), refused: { path: "/intent/technique" } },
  { name: "a negative count", design: design({ wraps: [{ id: "w", layers: -1 }] }), refused: { path: "/wraps/0/layers" } },
  { name: "a broken count", design: design({ wraps: [{ id: "w", layers: 1.5 }] }), refused: { path: "/wraps/0/layers" } },
  { name: "plugin data that is no object", design: design({ extensions: { club: 3 } }), refused: { path: "/extensions/club" } },
];
