// The host's modules. Expectations are written by hand; conversions from their definitions (1 in = 25.4 mm).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "api_table.h"
#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;

std::string Text(const std::string& call) {
  return Eval("require('withy.text')." + call);
}
std::string Units(const std::string& call) {
  return Eval("require('withy.units')." + call);
}
std::string Html(const std::string& call) {
  return Eval("require('withy.html').render(require('withy.html')." + call + ")");
}
std::string Svg(const std::string& call) {
  return Eval("require('withy.html').render(require('withy.svg')." + call + ")");
}
std::string Joined(const std::string& list) {
  return Eval("table.concat(" + list + ", '|')");
}

TEST(Modules, HaveExactlyTheDeclaredFunctions) {
  for (const plugin::ApiModule& module : plugin::ApiModules()) {
    std::string expected;
    std::vector<std::string> names;
    for (const plugin::ApiFunction& function : module.functions) names.emplace_back(function.name);
    std::sort(names.begin(), names.end());
    for (const std::string& name : names) expected += name + " ";
    EXPECT_EQ(Eval("(function() local s = '' for name in pairs(require('" + std::string(module.name) +
                   "')) do s = s .. name .. ' ' end return s end)()"),
              expected);
  }
}

// XML 1.0 section 2.2: of the control characters only tab, line feed and carriage return; not U+FFFE and U+FFFF. DEL and
// C1 are allowed and discouraged there.
TEST(HtmlModule, ShowsWhatXmlCannotHold) {
  EXPECT_EQ(Eval("require('withy.html').escape('a\\0\\1\\8\\t\\n\\11\\12\\14\\27\\31\\127b')"),
            "a\u2400\u2401\u2408\t\n\u240b\u240c\u240e\u241b\u241f\u2421" "b");
  EXPECT_EQ(Eval("require('withy.html').escape('\\u{80}\\u{9B}\\u{9F}\\u{A0}\\u{FFFE}\\u{FFFF}\\u{FFFD}<\\u{20AC}')"),
            "\ufffd\ufffd\ufffd\u00a0\ufffd\ufffd\ufffd&lt;\u20ac");
  EXPECT_EQ(Svg("text(0, 0, 'R\\27[31m', { id = 'x\\1' })"), "<text id=\"x\u2401\" x=\"0\" y=\"0\">R\u241b[31m</text>");
}

TEST(TextModule, ValuesWithTheirUncertainty) {
  EXPECT_EQ(Text("uncertain(12.34, 0.44, 1)"), "12.3 ± 0.4");
  EXPECT_EQ(Text("uncertain(12.34, nil, 1)"), "12.3");
  EXPECT_EQ(Text("uncertain(12.34)"), "12");
  EXPECT_EQ(Text("uncertain(nil, 0.4, 1)"), "not known");
}

TEST(TextModule, ClipsByCharacters) {
  EXPECT_EQ(Text("clipped('grün', 4)"), "grün");
  EXPECT_EQ(Text("clipped('grün', 3)"), "gr…");
  EXPECT_EQ(Text("clipped('grün', 1)"), "…");
}

TEST(TableModule, NeighboursOfANumber) {
  const std::string list = "require('withy.table')";
  EXPECT_EQ(Eval(list + ".at_most({ 1, 2, 5 }, 4.9)"), "2");
  EXPECT_EQ(Eval(list + ".at_most({ 1, 2, 5 }, 0)"), "1");
  EXPECT_EQ(Eval(list + ".at_least({ 1, 2, 5 }, 2.1)"), "5");
  EXPECT_EQ(Eval(list + ".at_least({ 1, 2, 5 }, 9)"), "5");
}

// 100 mm = 3.937 in = 3 15/16 in; 254 +- 0.4 mm.
TEST(LengthsModule, AsAskedFor) {
  const auto said = [](const std::string& units, const std::string& call) {
    return Eval("require('withy.lengths').asked({ options = { units = '" + units + "' } })." + call);
  };
  EXPECT_EQ(said("mm", "say(100.4)"), "100 mm");
  EXPECT_EQ(said("mm", "say(254, 0.4)"), "254.0 ± 0.4 mm");
  EXPECT_EQ(said("mm", "say(254, 3)"), "254 ± 3 mm");
  EXPECT_EQ(said("inch", "say(100)"), "3 15/16\"");
  EXPECT_EQ(said("inch", "say(254, 2.54)"), "10.0 ± 0.1 in");
  EXPECT_EQ(said("inch", "mm"), "25.4");
}

TEST(TextModule, LinesPadsAndWraps) {
  EXPECT_EQ(Text("trim('  a b\\t\\n')"), "a b");
  EXPECT_EQ(Joined("require('withy.text').lines('a\\r\\nb\\n\\nc\\n')"), "a|b||c");
  EXPECT_EQ(Joined("require('withy.text').lines('')"), "");
  EXPECT_EQ(Joined("require('withy.text').split('a.b..c', '.')"), "a|b||c");
  EXPECT_EQ(Joined("require('withy.text').wrap('one two three four', 9)"), "one two|three|four");
  EXPECT_EQ(Joined("require('withy.text').wrap('unbreakable x', 3)"), "unbreakable|x");
  EXPECT_EQ(Text("pad('\\xc3\\xa9', 3) .. '|'"), "\xc3\xa9  |");
  EXPECT_EQ(Text("pad('a', 3, 'right')"), "  a");
  EXPECT_THAT(Text("pad('a', 3, 'middle')"), HasSubstr("init.lua:1: align is"));
  EXPECT_EQ(Text("fixed(-0.001, 2)"), "0.00");
  EXPECT_EQ(Text("fixed(2.675, 1)"), "2.7");
}

// RFC 4180, section 2, rules 5 to 7.
TEST(TextModule, QuotesCellsAsRfc4180) {
  EXPECT_EQ(Text("csv_row({ 'a', 'b c', 'd,e', 'say \"x\"', 'two\\nlines', 12, 1.5, 2.0 })"),
            "a,b c,\"d,e\",\"say \"\"x\"\"\",\"two\nlines\",12,1.5,2");
  EXPECT_EQ(Text("csv_row({ 'a,b', 'c;d' }, ';')"), "a,b;\"c;d\"");
  EXPECT_EQ(Joined("require('withy.text').csv_cells('a,\"d,e\",\"say \"\"x\"\"\",,')"), "a|d,e|say \"x\"||");
  EXPECT_EQ(Eval("select(2, require('withy.text').csv_cells('a,\"b'))"), "column 3: a quote that is not closed");
  EXPECT_EQ(Eval("select(2, require('withy.text').csv_cells('\"a\"b'))"), "column 4: text after a closing quote");
}

TEST(UnitsModule, ReadsAndWritesLengthsAsTheTradeDoes) {
  EXPECT_EQ(Units("length('7\\' 3 1/2\"').inch"), "87.5");  // 7 x 12 + 3.5
  EXPECT_EQ(Units("length('2222.5 mm').mm"), "2222.5");
  EXPECT_EQ(Units("mass('150 gr').grain"), "150.0");
  EXPECT_EQ(Eval("(require('withy.units').length('87'))"), "nil");
  EXPECT_THAT(Eval("select(2, require('withy.units').length('2,5 mm'))"), HasSubstr("comma"));
  EXPECT_EQ(Units("feet_inches(2222.5)"), "7' 3 1/2\"");
  EXPECT_EQ(Units("inches(309.5625, 16)"), "12 3/16\"");  // 12.1875 in x 25.4
  EXPECT_EQ(Units("in64(2.1828125)"), "5.5/64");
  EXPECT_EQ(Units("round(101, 2)"), "102.0");  // half away from zero: 50.5 steps
  EXPECT_EQ(Units("convert(87, 'inch', 'mm')"), "2209.8");
  EXPECT_THAT(Units("convert(1, 'inch', 'g')"), HasSubstr("different things"));
  EXPECT_THAT(Units("convert(1, 'inch', 'mmm')"), HasSubstr("there is no unit 'mmm'"));
  EXPECT_THAT(Units("inches(1, 10)"), HasSubstr("2, 4, 8, 16, 32 or 64"));
}

TEST(TableModule, MakesNewListsOfTheDesignsToo) {
  const std::string table = "require('withy.table').";
  EXPECT_EQ(Joined(table + "map(ctx.design.guides, function(g) return g.id end)"), "g1|g2");
  EXPECT_EQ(Joined(table + "sort_by({ 'b', 'a', 'c' })"), "a|b|c");
  EXPECT_EQ(Joined(table + "map(" + table +
                   "sort_by({ { k = 2, n = 'x' }, { k = 1, n = 'y' }, { k = 2, n = 'z' } }, 'k'), "
                   "function(i) return i.n end)"),
            "y|x|z");
  EXPECT_EQ(Joined(table + "filter({ 1, 2, 3, 4 }, function(x) return x % 2 == 0 end)"), "2|4");
  EXPECT_EQ(Eval(table + "find(ctx.design.guides, function(g) return g.id == 'g2' end).id"), "g2");
  EXPECT_EQ(Eval(table + "sum({ { m = 1 }, {}, { m = 2 } }, 'm')"), "3");
  EXPECT_EQ(Eval(table + "sum({ 1, 2, 3 })"), "6");
}

TEST(HtmlModule, EscapesWhatIsText) {
  EXPECT_EQ(Html("element('td', { class = 'a\"b' }, '<script>', 1.25, 3, nil, false, { 'x', 'y' })"),
            "<td class=\"a&quot;b\">&lt;script&gt;1.253xy</td>");
  EXPECT_EQ(Html("element('p', { b = 1, a = true, c = false })"), "<p a b=\"1\"></p>");
  EXPECT_EQ(Html("element('br', {})"), "<br>");
  EXPECT_THAT(Html("element('p onclick=x', {})"), HasSubstr("an element has a name"));
  EXPECT_THAT(Html("element('p', { ['a b'] = 1 })"), HasSubstr("cannot name an attribute"));
  EXPECT_THAT(Html("element('p', {}, 1/0)"), HasSubstr("not finite"));
  EXPECT_EQ(Html("table { head = { 'a', 'b' }, align = { 'left', 'right' }, rows = { { 1, 2 } } }"),
            "<table><thead><tr><th style=\"text-align:left\">a</th><th "
            "style=\"text-align:right\">b</th></tr></thead><tbody><tr>"
            "<td style=\"text-align:left\">1</td><td style=\"text-align:right\">2</td></tr></tbody></table>");
  std::string page = Eval("require('withy.html').page { title = 'a < b', style = 'p {}', body = 'x & y' }");
  EXPECT_THAT(page, testing::StartsWith("<!DOCTYPE html>\n<html lang=\"en\">\n"));
  EXPECT_THAT(page, HasSubstr("<title>a &lt; b</title>"));
  EXPECT_THAT(page, HasSubstr("<body>\nx &amp; y\n</body>"));
  EXPECT_THAT(Eval("require('withy.html').page { title = 't', style = '</style><script>' }"),
              HasSubstr("cannot contain"));
}

TEST(SvgModule, DrawsInMillimetres) {
  EXPECT_EQ(Svg("drawing(100, 50.5)"),
            "<svg height=\"50.500mm\" viewBox=\"0 0 100.000 50.500\" width=\"100.000mm\" "
            "xmlns=\"http://www.w3.org/2000/svg\"></svg>");
  EXPECT_EQ(Svg("line(0, 1, 2.5, 1/3, { stroke = '#000' })"),
            "<line stroke=\"#000\" x1=\"0\" x2=\"2.5\" y1=\"1\" y2=\"0.333\"></line>");
  EXPECT_EQ(Svg("polyline({ { 0, 1 }, { 2, 3.5 } })"), "<polyline points=\"0.000,1.000 2.000,3.500\"></polyline>");
  EXPECT_EQ(Svg("text(1, 2, 'a & b')"), "<text x=\"1\" y=\"2\">a &amp; b</text>");
}

// ISO 216: A4 is 210 mm by 297 mm. ANSI/ASME Y14.1: letter is 8.5 in by 11 in = 215.9 mm by 279.4 mm.
TEST(SheetModule, KnowsItsPaper) {
  EXPECT_EQ(Eval("require('withy.sheet').paper('A4').height_mm"), "297");
  EXPECT_EQ(Eval("require('withy.sheet').paper('Letter').width_mm"), "215.9");
  EXPECT_THAT(Eval("require('withy.sheet').paper('a4')"), HasSubstr("paper is"));
  EXPECT_THAT(Eval("require('withy.sheet').style { paper = 'A4', landscape = true, margin_mm = 10 }"),
              HasSubstr("@page { size: 297.0mm 210.0mm; margin: 10.0mm; }"));
  EXPECT_THAT(Eval("require('withy.sheet').style()"), HasSubstr("@page { margin: 12.0mm; }"));
  EXPECT_EQ(Eval("(function() local s = '' for _, t in ipairs(require('withy.sheet').tiles(500, 250, 10)) do "
                 "s = s .. t.start_mm .. '-' .. t.end_mm .. ' ' end return s end)()"),
            "0-250 240-490 480-500 ");
  EXPECT_THAT(Svg("group({}, require('withy.sheet').scale_bar(100))"), HasSubstr("This line is 100 mm"));
}

}  // namespace
}  // namespace withy
