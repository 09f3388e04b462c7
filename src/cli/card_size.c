/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_size.h"

#include <string.h>

static const struct
{
  const char *name;
  double metres;
} units[] = {
  { "mm", 0.001 },
  { "cm", 0.01 },
  { "in", 0.0254 },
};

static char *
plain_name (const char *name)
{
  g_auto (GStrv) parts = g_strsplit_set (name, "- ", -1);
  g_autofree char *joined = g_strjoinv (NULL, parts);

  return g_ascii_strdown (joined, -1);
}

/* Plain digits with at most one decimal sign; NULL when none stand here. */
static const char *
read_number (const char *text, double *number)
{
  char digits[16];
  size_t n = strspn (text, "0123456789.,");

  if (n == 0 || n >= sizeof digits || !g_ascii_isdigit (*text))
    return NULL;
  memcpy (digits, text, n);
  digits[n] = '\0';
  g_strdelimit (digits, ",", '.');
  if (strchr (digits, '.') != strrchr (digits, '.'))
    return NULL;
  *number = g_ascii_strtod (digits, NULL);
  return text + n;
}

static gboolean
is_side (double metres)
{
  return metres >= LB_CARD_LEAST_SIDE - 1e-9 && metres <= LB_CARD_MOST_SIDE + 1e-9;
}

/* "100x70mm" */
static gboolean
parse_own (const char *text, LbCard *card)
{
  double width, height;

  text = read_number (text, &width);
  if (text == NULL || *text != 'x')
    return FALSE;
  text = read_number (text + 1, &height);
  for (size_t i = 0; text && i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (text, units[i].name) && is_side (width * units[i].metres)
        && is_side (height * units[i].metres))
      {
        card->size = LB_CARD_OWN_SIZE;
        card->own_width = width * units[i].metres;
        card->own_height = height * units[i].metres;
        return TRUE;
      }
  return FALSE;
}

gboolean
lb_card_size_parse (const char *text, LbCard *card)
{
  g_autofree char *wanted = plain_name (text);

  for (int size = 0; size < LB_CARD_OWN_SIZE; size++)
    {
      g_autofree char *name = plain_name (lb_card_size_name ((LbCardSize) size));

      if (g_str_equal (wanted, name))
        {
          card->size = (LbCardSize) size;
          return TRUE;
        }
    }
  return parse_own (wanted, card);
}

char *
lb_card_size_names (void)
{
  GString *names = g_string_new (NULL);

  for (int size = 0; size < LB_CARD_OWN_SIZE; size++)
    g_string_append_printf (names, "%s%s", size ? ", " : "", lb_card_size_name ((LbCardSize) size));
  return g_string_free (names, FALSE);
}
