/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n.h>
#include <locale.h>

#include "application.h"

static int
options_cb (GApplication *application, GVariantDict *options, gpointer user_data)
{
  if (!g_variant_dict_contains (options, "version"))
    return -1; /* go on */
  g_print ("layback %s\n", LB_VERSION);
  return 0;
}

int
main (int argc, char **argv)
{
  const char *locale_dir = g_getenv ("LAYBACK_LOCALE_DIR");
  g_autoptr (LbApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (LB_GETTEXT_DOMAIN, locale_dir && *locale_dir ? locale_dir : LB_LOCALE_DIR);
  bind_textdomain_codeset (LB_GETTEXT_DOMAIN, "UTF-8");
  textdomain (LB_GETTEXT_DOMAIN);
  g_set_application_name (_ ("Layback"));

  application = lb_application_new (G_APPLICATION_DEFAULT_FLAGS);
  g_signal_connect (application, "handle-local-options", G_CALLBACK (options_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
