/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_file.h"

static void
add_paper (LbJsonText *json, const LbCard *card)
{
  lb_json_text_put_string (json, "size", lb_card_size_name (card->size));
  lb_json_text_put_number (json, "width_m", card->own_width);
  lb_json_text_put_number (json, "height_m", card->own_height);
  lb_json_text_put_boolean (json, "wide", card->wide);
  lb_json_text_put_string (json, "sheet", lb_card_sheet_name (card->sheet));
  lb_json_text_put_boolean (json, "several", card->several);
}

static void
add_prints (LbJsonText *json, const LbCard *card)
{
  lb_json_text_open_member (json, "prints", '{');
  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    lb_json_text_put_boolean (json, lb_card_part_name ((LbCardPart) i), card->prints[i]);
  lb_json_text_close (json, '}');
  lb_json_text_put_string (json, "running", lb_card_running_name (card->running_variants));
}

static void
add_terminations (LbJsonText *json, const LbCard *card)
{
  lb_json_text_open_member (json, "terminations", '{');
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      lb_json_text_key (json, lb_card_joint_name ((LbCardJoint) i));
      lb_json_text_open (json, '{');
      lb_json_text_put_string (json, "how", card->terminations[i].how.text);
      lb_json_text_put_number (json, "allowance_m", card->terminations[i].allowance);
      lb_json_text_close (json, '}');
    }
  lb_json_text_close (json, '}');
}

static void
add_hardware (LbJsonText *json, const LbCard *card)
{
  lb_json_text_open_member (json, "hardware", '[');
  for (size_t i = 0; i < card->n_hardware; i++)
    {
      lb_json_text_open_item (json, '{');
      lb_json_text_put_number (json, "count", card->hardware[i].count);
      lb_json_text_put_string (json, "what", card->hardware[i].what.text);
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
      lb_json_text_put_number (json, "from", series->from);
      lb_json_text_put_number (json, "to", series->to);
      lb_json_text_put_number (json, "step", series->step);
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
