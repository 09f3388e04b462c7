/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That the colours can be read and told apart, by published measures. */
#include "style.h"
#include "test.h"

/* Relative luminance and contrast: W3C, WCAG 2.1, definitions of "relative luminance" and "contrast
 * ratio" (from memory: 0.2126, 0.7152, 0.0722; 0.03928; (L1 + 0.05) / (L2 + 0.05)). */
static double
linear (double channel)
{
  return channel <= 0.03928 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (LbRgba c)
{
  return 0.2126 * linear (c.r) + 0.7152 * linear (c.g) + 0.0722 * linear (c.b);
}

static double
contrast (LbRgba a, LbRgba b)
{
  double la = luminance (a), lb = luminance (b);

  return (fmax (la, lb) + 0.05) / (fmin (la, lb) + 0.05);
}

/* `top` as it looks over the opaque `under`. */
static LbRgba
over (LbRgba top, LbRgba under)
{
  return (LbRgba){ top.a * top.r + (1 - top.a) * under.r, top.a * top.g + (1 - top.a) * under.g,
                   top.a * top.b + (1 - top.a) * under.b, 1 };
}

static void
assert_contrast (
    const LbStyle *style, LbColour words, LbColour ground, LbColour under, double least)
{
  LbRgba behind = over (style->colours[ground], style->colours[under]);
  double found = contrast (over (style->colours[words], behind), behind);

  if (found < least)
    fail_msg ("theme %d: colour %d on %d over %d has contrast %.2f, less than %.1f", style->theme,
              words, ground, under, found, least);
}

/* WCAG 2.1, 1.4.3: words 4.5 to 1. 1.4.11: things that must be made out 3 to 1. */
static void
test_words_and_things_stand_out (void **state)
{
  static const LbColour water[] = { LB_COLOUR_WATER_TOP, LB_COLOUR_WATER_LOW };
  static const LbColour lines[] = { LB_COLOUR_WIRE,      LB_COLOUR_SHANK,  LB_COLOUR_LEADER,
                                    LB_COLOUR_LURE_LINE, LB_COLOUR_INSIDE, LB_COLOUR_ABOVE,
                                    LB_COLOUR_BELOW,     LB_COLOUR_ON_BED, LB_COLOUR_RUN_1,
                                    LB_COLOUR_RUN_2,     LB_COLOUR_RUN_3,  LB_COLOUR_RUN_4 };

  for (int theme = 0; theme < LB_N_THEMES; theme++)
    {
      LbStyle style = lb_style_make ((LbTheme) theme, 1);

      for (int w = 0; w < 2; w++)
        {
          assert_contrast (&style, LB_COLOUR_TEXT, LB_COLOUR_CARD, water[w], 4.5);
          assert_contrast (&style, LB_COLOUR_TEXT, water[w], water[w], 4.5);
          assert_contrast (&style, LB_COLOUR_TEXT_QUIET, water[w], water[w], 4.5);
          assert_contrast (&style, LB_COLOUR_TEXT_QUIET, LB_COLOUR_BAND, water[w], 4.5);
          assert_contrast (&style, LB_COLOUR_TEXT, LB_COLOUR_BAND, water[w], 4.5);
          assert_contrast (&style, LB_COLOUR_CURRENT, water[w], water[w], 3);
          for (int i = 0; i < 12; i++)
            {
              assert_contrast (&style, lines[i], water[w], water[w], 3);
              assert_contrast (&style, lines[i], LB_COLOUR_BAND, water[w], 3);
            }
        }
      assert_contrast (&style, LB_COLOUR_TEXT_ON_BED, LB_COLOUR_BED_TOP, LB_COLOUR_BED_TOP, 4.5);
      assert_contrast (&style, LB_COLOUR_TEXT_ON_BED, LB_COLOUR_BED_LOW, LB_COLOUR_BED_LOW, 4.5);
      assert_contrast (&style, LB_COLOUR_TEXT_QUIET, LB_COLOUR_SKY_LOW, LB_COLOUR_SKY_LOW, 4.5);
      assert_contrast (&style, LB_COLOUR_REMARK, LB_COLOUR_REMARK_CARD, LB_COLOUR_REMARK_CARD, 4.5);
      for (int i = 4; i < 8; i++) /* the signs inside the markers */
        assert_contrast (&style, LB_COLOUR_CARD, lines[i], lines[i], 4.5);
    }
}

/* As people without red or without green receptors see a colour: Vienot, Brettel and Mollon 1999,
 * Color Research and Application 24, 243 (matrices in linear RGB, from memory). */
static LbRgba
without_receptor (LbRgba c, int receptor)
{
  double r = linear (c.r), g = linear (c.g), b = linear (c.b);
  double red = receptor == 0 ? 0.11238 * r + 0.88762 * g : 0.29275 * r + 0.70725 * g;
  double blue = receptor == 0 ? 0.00401 * r - 0.00401 * g + b : -0.02234 * r + 0.02234 * g + b;

  return (LbRgba){ red, red, fmax (0, blue), 1 };
}

/* The state of a lure is told by shape and word; its colour must at least not mislead: in the band
 * and below it, or on the bed, look different to everybody in hue or in lightness. */
static void
test_states_differ_for_the_colour_blind (void **state)
{
  static const LbColour others[] = { LB_COLOUR_BELOW, LB_COLOUR_ON_BED };

  for (int theme = LB_THEME_LIGHT; theme <= LB_THEME_DARK; theme++)
    {
      LbStyle style = lb_style_make ((LbTheme) theme, 1);

      for (int receptor = 0; receptor < 2; receptor++)
        for (int i = 0; i < 2; i++)
          {
            LbRgba a = without_receptor (style.colours[LB_COLOUR_INSIDE], receptor);
            LbRgba b = without_receptor (style.colours[others[i]], receptor);

            assert_less (0.12, hypot (a.r - b.r, a.b - b.b));
          }
    }
}

/* Runs laid over one another are told by their line patterns; their colours differ for everybody,
 * too, each from every other. */
static void
test_runs_differ_for_the_colour_blind (void **state)
{
  for (int theme = LB_THEME_LIGHT; theme <= LB_THEME_DARK; theme++)
    {
      LbStyle style = lb_style_make ((LbTheme) theme, 1);

      for (int receptor = 0; receptor < 2; receptor++)
        for (int i = LB_COLOUR_RUN_1; i <= LB_COLOUR_RUN_4; i++)
          for (int j = LB_COLOUR_RUN_1; j < i; j++)
            {
              LbRgba a = without_receptor (style.colours[i], receptor);
              LbRgba b = without_receptor (style.colours[j], receptor);

              if (hypot (a.r - b.r, a.b - b.b) < 0.06)
                fail_msg ("theme %d, receptor %d: runs %d and %d are %.3f apart", theme, receptor,
                          j - LB_COLOUR_RUN_1 + 1, i - LB_COLOUR_RUN_1 + 1,
                          hypot (a.r - b.r, a.b - b.b));
            }
    }
}

static void
test_print_has_greys_only (void **state)
{
  LbStyle style = lb_style_make (LB_THEME_PRINT, 1);

  for (int i = 0; i < LB_N_COLOURS; i++)
    {
      assert_near (style.colours[i].r, style.colours[i].g, 0);
      assert_near (style.colours[i].g, style.colours[i].b, 0);
    }
}

static void
test_every_colour_is_given (void **state)
{
  for (int theme = 0; theme < LB_N_THEMES; theme++)
    {
      LbStyle style = lb_style_make ((LbTheme) theme, 1);

      for (int i = 1; i < LB_N_COLOURS; i++)
        assert_less (0, style.colours[i].a);
    }
}

static void
test_sizes_follow_the_scale (void **state)
{
  LbStyle one = lb_style_make (LB_THEME_LIGHT, 1), two = lb_style_make (LB_THEME_LIGHT, 2);

  assert_near (two.wire_width, 2 * one.wire_width, 1e-12);
  assert_near (two.font_size[LB_FONT_SCALE], 2 * one.font_size[LB_FONT_SCALE], 1e-12);
  assert_near (lb_style_scale_for (900, 480), 1, 1e-12);
  assert_less (2, lb_style_scale_for (3840, 2160));
  assert_near (lb_style_scale_for (640, 240), 0.88, 1e-12);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_words_and_things_stand_out),
    cmocka_unit_test (test_states_differ_for_the_colour_blind),
    cmocka_unit_test (test_runs_differ_for_the_colour_blind),
    cmocka_unit_test (test_print_has_greys_only),
    cmocka_unit_test (test_every_colour_is_given),
    cmocka_unit_test (test_sizes_follow_the_scale),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
