/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rules.h"

#include <glib/gi18n-lib.h>

static bool
is_over (size_t count, double limit)
{
  return lb_is_set (limit) && (double) count > limit;
}

LbRulesCount
lb_rules_count (const LbSetup *setup)
{
  LbRulesCount count = { .lures = setup->rig.n_leaders };
  double hooks = 0;

  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    hooks += setup->rig.leaders[i].lure.hooks;
  count.hooks = (size_t) hooks;
  count.too_many_lures = is_over (count.lures, setup->rules.lures_per_line);
  count.too_many_hooks = is_over (count.hooks, setup->rules.hooks_per_line);
  return count;
}

static char *
lures (size_t n)
{
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%zu lure", "%zu lures", n), n);
}

static char *
hooks (size_t n)
{
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%zu hook", "%zu hooks", n), n);
}

char *
lb_rules_dup_count (const LbSetup *setup)
{
  LbRulesCount count = lb_rules_count (setup);
  g_autofree char *n_lures = lures (count.lures);
  g_autofree char *n_hooks = hooks (count.hooks);

  /* Translators: "2 lures and 4 hooks on the line." */
  return g_strdup_printf (_ ("%s and %s on the line."), n_lures, n_hooks);
}

static char *
excess (const char *counted, double limit)
{
  /* Translators: "3 lures on the line; your limit is 2." */
  return g_strdup_printf (_ ("%s on the line; your limit is %.0f."), counted, limit);
}

char *
lb_rules_dup_excess (const LbSetup *setup)
{
  LbRulesCount count = lb_rules_count (setup);
  g_autofree char *n_lures = lures (count.lures);
  g_autofree char *n_hooks = hooks (count.hooks);
  g_autofree char *of_lures = excess (n_lures, setup->rules.lures_per_line);
  g_autofree char *of_hooks = excess (n_hooks, setup->rules.hooks_per_line);

  if (count.too_many_lures && count.too_many_hooks)
    return g_strconcat (of_lures, " ", of_hooks, NULL);
  if (count.too_many_lures)
    return g_steal_pointer (&of_lures);
  return count.too_many_hooks ? g_steal_pointer (&of_hooks) : NULL;
}

const char *
lb_rules_note (void)
{
  return _ ("Local rules decide; this only counts.");
}
