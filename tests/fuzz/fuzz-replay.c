/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs the fuzz target over files, for compilers without libFuzzer: fuzz-replay FOLDER... */
#include <stdint.h>
#include <glib.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static int
replay (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  int n = 0;

  while (dir && (name = g_dir_read_name (dir)))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *text = NULL;
      gsize length;

      if (g_file_get_contents (path, &text, &length, NULL))
        {
          LLVMFuzzerTestOneInput ((const uint8_t *) text, length);
          n++;
        }
    }
  return n;
}

int
main (int argc, char **argv)
{
  int status = 0;

  for (int i = 1; i < argc; i++)
    if (replay (argv[i]) == 0)
      status = 1;
  return argc < 2 ? 1 : status;
}
