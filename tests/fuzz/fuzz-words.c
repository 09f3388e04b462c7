/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Feeds any text to the fields' parser, as every quantity and in both systems. What it takes must
 * be a number, and what it refuses it must explain. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>

#include "fuzz-check.h"
#include "words.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);

  for (int quantity = 0; quantity < LB_N_QUANTITIES; quantity++)
    for (int units = 0; units < 2; units++)
      {
        g_autofree char *fault = NULL;
        double value = 0;

        if (lb_words_parse ((LbQuantity) quantity, (LbUnits) units, text, &value, &fault))
          {
            g_autofree char *words =
                lb_words_quantity ((LbQuantity) quantity, (LbUnits) units, value, -1);

            require (isfinite (value), "a value that is no number");
            require (g_utf8_validate (words, -1, NULL), "words that are not UTF-8");
          }
        else
          require (fault && *fault && g_utf8_validate (fault, -1, NULL), "a refusal unexplained");
      }
  return 0;
}
