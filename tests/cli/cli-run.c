/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli-run.h"

#include <string.h>

void
run_clear (Run *run)
{
  g_free (run->out);
  g_free (run->err);
}

/* `locale` may be NULL. */
static GSubprocess *
start (const char *locale, const char *const *arguments)
{
  g_autoptr (GSubprocessLauncher) launcher =
      g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE);
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  GSubprocess *process;

  g_ptr_array_add (argv, getenv ("LB_TEST_CLI"));
  for (size_t i = 0; arguments[i]; i++)
    g_ptr_array_add (argv, (char *) arguments[i]);
  g_ptr_array_add (argv, NULL);
  if (locale)
    g_subprocess_launcher_setenv (launcher, "LC_ALL", locale, TRUE);
  process = g_subprocess_launcher_spawnv (launcher, (const char *const *) argv->pdata, &error);
  if (process == NULL)
    fail_msg ("%s", error->message);
  return process;
}

/* FALSE when a signal ended it. */
static gboolean
finish (GSubprocess *process, Run *run)
{
  g_autoptr (GError) error = NULL;

  if (!g_subprocess_communicate_utf8 (process, NULL, NULL, &run->out, &run->err, &error))
    fail_msg ("%s", error->message);
  if (!g_subprocess_get_if_exited (process))
    return FALSE;
  run->status = g_subprocess_get_exit_status (process);
  return TRUE;
}

Run
run_in (const char *locale, const char *const *arguments)
{
  g_autoptr (GSubprocess) process = start (locale, arguments);
  Run run = { 0 };

  assert_true (finish (process, &run));
  return run;
}

Run
run_interrupted (int signal, const char *const *arguments)
{
  /* Before it listens a signal ends it: on a busy machine it gets more time. */
  for (gulong wait = G_USEC_PER_SEC / 2; wait <= 8 * G_USEC_PER_SEC; wait *= 2)
    {
      g_autoptr (GSubprocess) process = start (NULL, arguments);
      Run run = { 0 };

      g_usleep (wait);
      g_subprocess_send_signal (process, signal);
      if (finish (process, &run) && strstr (run.err, "breaks off"))
        return run;
      run_clear (&run);
    }
  fail_msg ("it was never interrupted at work");
  return (Run){ 0 };
}

char *
sample (const char *name)
{
  return g_build_filename (getenv ("LAYBACK_SAMPLES_DIR"), name, NULL);
}

char *
output (const char *name)
{
  return g_build_filename (getenv ("LB_TEST_OUTPUT_DIR"), name, NULL);
}

void
assert_contains (const char *text, const char *part)
{
  if (!strstr (text, part))
    fail_msg ("\"%s\" is not in \"%s\"", part, text);
}

void
assert_refused (const Run *run, int status, const char *message)
{
  g_auto (GStrv) lines = g_strsplit (run->err, "\n", -1);
  g_autofree char *expected = g_strconcat ("layback-cli: ", message, NULL);

  assert_string_equal (run->out, "");
  assert_string_equal (lines[0], expected);
  assert_int_equal (run->status, status);
  /* A wrong use gets a hint at --help besides. */
  assert_int_equal (g_strv_length (lines), status == 2 ? 3 : 2);
}

JsonNode *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *node = json_from_string (text, &error);

  if (node == NULL)
    fail_msg ("%s in %s", error ? error->message : "nothing", text);
  assert_true (JSON_NODE_HOLDS_OBJECT (node));
  return node;
}

double
number (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || !JSON_NODE_HOLDS_VALUE (node))
    fail_msg ("no number \"%s\"", key);
  return json_node_get_double (node);
}
