/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_file.h"

static void
add_text (LbJsonText *json, const char *key, const char *text)
{
  lb_json_text_key (json, key);
  lb_json_text_add_string (json, text);
}

static void
add_number (LbJsonText *json, const char *key, double number)
{
  lb_json_text_key (json, key);
  lb_json_text_add_number (json, number);
}

static void
add_boolean (LbJsonText *json, const char *key, bool value)
{
  lb_json_text_key (json, key);
  lb_json_text_add_boolean (json, value);
}

static void
add_paper (LbJsonText *json, const LbCard *card)
{
  add_text (json, "size", lb_card_size_name (card->size));
  add_number (json, "width_m", card->own_width);
  add_number (json, "height_m", card->own_height);
  add_boolean (json, "wide", card->wide);
  add_text (json, "sheet", lb_card_sheet_name (card->sheet));
  add_boolean (json, "several", card->several);
}

static void
add_prints (LbJsonText *json, const LbCard *card)
{
  lb_json_text_key (json, "prints");
  lb_json_text_open (json, '{');
  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    add_boolean (json, lb_card_part_name ((LbCardPart) i), card->prints[i]);
  lb_json_text_close (json, '}');
  add_text (json, "running", lb_card_running_name (card->running_variants));
}

static void
add_terminations (LbJsonText *json, const LbCard *card)
{
  lb_json_text_key (json, "terminations");
  lb_json_text_open (json, '{');
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      lb_json_text_key (json, lb_card_joint_name ((LbCardJoint) i));
      lb_json_text_open (json, '{');
      add_text (json, "how", card->terminations[i].how.text);
      add_number (json, "allowance_m", card->terminations[i].allowance);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, '}');
}

static void
add_hardware (LbJsonText *json, const LbCard *card)
{
  lb_json_text_key (json, "hardware");
  lb_json_text_open (json, '[');
  for (size_t i = 0; i < card->n_hardware; i++)
    {
      lb_json_text_start_line (json);
      lb_json_text_open (json, '{');
      add_number (json, "count", card->hardware[i].count);
      add_text (json, "what", card->hardware[i].what.text);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, ']');
}

static void
add_series (LbJsonText *json, const char *key, const LbCardSeries *series)
{
  lb_json_text_key (json, key);
  if (series->kind == LB_CARD_SERIES_STEPS)
    {
      lb_json_text_open (json, '{');
      add_number (json, "from", series->from);
      add_number (json, "to", series->to);
      add_number (json, "step", series->step);
      lb_json_text_close (json, '}');
    }
  else if (series->kind == LB_CARD_SERIES_LIST)
    {
      for (size_t i = 0; i < series->n; i++)
        {
          g_string_append (json->text, i == 0 ? "[" : ", ");
          lb_json_text_add_number (json, series->values[i]);
        }
      g_string_append_c (json->text, ']');
    }
  else
    g_string_append (json->text, "null");
}

void
lb_card_write (LbJsonText *json, const LbCard *card)
{
  lb_json_text_open (json, '{');
  add_paper (json, card);
  add_prints (json, card);
  add_terminations (json, card);
  add_hardware (json, card);
  add_series (json, "depths_m", &card->series[LB_CARD_SERIES_OF_DEPTHS]);
  add_series (json, "currents_m_s", &card->series[LB_CARD_SERIES_OF_CURRENTS]);
  lb_json_text_key (json, "date");
  if (card->dated_today)
    g_string_append (json->text, "null");
  else
    lb_json_text_add_string (json, card->date.text);
  lb_json_text_close (json, '}');
}
