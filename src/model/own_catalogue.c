/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "own_catalogue.h"

#include <glib/gi18n-lib.h>

#include "catalogue_private.h"
#include "contents.h"
#include "save_file.h"

#define FOLDER_MODE 0700

char *
lb_own_catalogue_dup_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "layback", "catalogue.json", NULL);
}

/* ---- Reading ---- */

static bool
has_id (const LbCatalogue *own, const char *id)
{
  return lb_catalogue_find_weight (own, id) || lb_catalogue_find_line (own, id)
         || lb_catalogue_find_lure (own, id);
}

/* "own-1" and so on: no built-in part's id begins like that. */
static char *
new_id (const LbCatalogue *own)
{
  for (guint n = 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("own-%u", n);

      if (!has_id (own, id))
        return g_steal_pointer (&id);
    }
}

/* A part whose id another one has too, or which might be taken for a built-in one, as in a file
 * that was edited by hand, gets one of its own. `id` is its place in the part. */
static void
mend_id (const LbCatalogue *own, GHashTable *seen, char **id)
{
  char *mended;

  if (!g_str_has_prefix (*id, "own-") || g_hash_table_contains (seen, *id))
    {
      mended = new_id (own);
      g_free (*id);
      *id = mended;
    }
  g_hash_table_add (seen, *id);
}

static void
mend_ids (LbCatalogue *own)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < own->weights->len; i++)
    mend_id (own, seen, &((LbCatalogueWeight *) g_ptr_array_index (own->weights, i))->id);
  for (guint i = 0; i < own->lines->len; i++)
    mend_id (own, seen, &((LbCatalogueLine *) g_ptr_array_index (own->lines, i))->id);
  for (guint i = 0; i < own->lures->len; i++)
    mend_id (own, seen, &((LbCatalogueLure *) g_ptr_array_index (own->lures, i))->id);
}

/* The user's own alone; empty when there is no file yet. */
static LbCatalogue *
load_own (GError **error)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *text = NULL;
  g_autoptr (GError) fault = NULL;
  LbCatalogue *own;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, &fault))
    {
      if (g_error_matches (fault, G_FILE_ERROR, G_FILE_ERROR_NOENT))
        return lb_catalogue_new ();
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ, "%s", fault->message);
      return NULL;
    }
  if (length > LB_CATALOGUE_LARGEST)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_TOO_LARGE, _ ("%s: too large"), path);
      return NULL;
    }
  own = lb_catalogue_parse_own (text, (gssize) length, &fault);
  if (!own)
    g_set_error (error, LB_FILE_ERROR, fault->code, "%s: %s", path, fault->message);
  else
    mend_ids (own);
  return own;
}

static void
take_all (GPtrArray *to, GPtrArray *from)
{
  g_ptr_array_extend_and_steal (to, g_ptr_array_ref (from));
}

LbCatalogue *
lb_catalogue_load_with_own (char **own_fault, GError **error)
{
  LbCatalogue *catalogue = lb_catalogue_load (error);
  g_autoptr (LbCatalogue) own = NULL;
  g_autoptr (GError) fault = NULL;

  if (own_fault)
    *own_fault = NULL;
  if (!catalogue)
    return NULL;
  own = load_own (&fault);
  if (own)
    {
      take_all (catalogue->weights, own->weights);
      take_all (catalogue->lines, own->lines);
      take_all (catalogue->lures, own->lures);
    }
  else if (own_fault)
    *own_fault = g_strdup (fault->message);
  return catalogue;
}

/* ---- Changing ---- */

static gboolean
save_own (const LbCatalogue *own, GError **error)
{
  g_autofree char *path = lb_own_catalogue_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *text = NULL;
  gsize length;

  text = lb_catalogue_write_own (own, &length);
  /* What goes wrong here is told by the writing. */
  (void) g_mkdir_with_parents (folder, FOLDER_MODE);
  return lb_save_file (file, text, length, error);
}

/* One line of some letters; NULL with an error when there is nothing in it. */
static char *
clean_name (const char *name, GError **error)
{
  g_autofree char *utf8 = g_utf8_make_valid (name, -1);
  g_autofree char *line = g_strstrip (lb_text_to_one_line (utf8));

  if (*line == '\0')
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_RANGE, _ ("Give it a name first."));
      return NULL;
    }
  if (g_utf8_strlen (line, -1) > LB_NAME_LONGEST)
    return g_utf8_substring (line, 0, LB_NAME_LONGEST);
  return g_steal_pointer (&line);
}

static gboolean
finish (const LbCatalogue *own, const char *new_part, char **id, GError **error)
{
  if (!save_own (own, error))
    return FALSE;
  if (id)
    *id = g_strdup (new_part);
  return TRUE;
}

/* All kinds of parts begin alike, with an id and a name. */
typedef struct
{
  char *id;
  char *name;
} Head;

G_STATIC_ASSERT (offsetof (LbCatalogueWeight, name) == offsetof (Head, name));
G_STATIC_ASSERT (offsetof (LbCatalogueLine, name) == offsetof (Head, name));
G_STATIC_ASSERT (offsetof (LbCatalogueLure, name) == offsetof (Head, name));

/* The part of that name, else a new one of `size` bytes, put behind. Takes `name` over. */
static gpointer
part_named (LbCatalogue *own, GPtrArray *parts, gsize size, char *name)
{
  Head *part;

  for (guint i = 0; i < parts->len; i++)
    {
      part = g_ptr_array_index (parts, i);
      if (g_str_equal (part->name, name))
        {
          g_free (name);
          return part;
        }
    }
  part = g_malloc0 (size);
  part->id = new_id (own);
  part->name = name;
  g_ptr_array_add (parts, part);
  return part;
}

gboolean
lb_own_catalogue_add_weight (const char *name, const LbWeight *weight, char **id, GError **error)
{
  LbSetup trial = lb_setup_default ();
  g_autofree char *line = clean_name (name, error);
  g_autoptr (LbCatalogue) own = NULL;
  LbCatalogueWeight *part;

  trial.rig.weight = *weight;
  if (!line || !lb_setup_validate (&trial, error) || !(own = load_own (error)))
    return FALSE;
  part = part_named (own, own->weights, sizeof *part, g_steal_pointer (&line));
  part->weight = *weight;
  return finish (own, part->id, id, error);
}

gboolean
lb_own_catalogue_add_line (
    const char *name, guint uses, const LbLine *line_values, char **id, GError **error)
{
  LbSetup trial = lb_setup_default ();
  g_autofree char *line = clean_name (name, error);
  g_autoptr (LbCatalogue) own = NULL;
  LbCatalogueLine *part;

  g_return_val_if_fail (uses != 0, FALSE);
  trial.rig.mainline = *line_values;
  if (!line || !lb_setup_validate (&trial, error) || !(own = load_own (error)))
    return FALSE;
  part = part_named (own, own->lines, sizeof *part, g_steal_pointer (&line));
  part->uses |= uses;
  part->line = *line_values;
  part->breaking_load_high = line_values->breaking_load;
  return finish (own, part->id, id, error);
}

/* A value that is known: its range is itself. */
static LbCatalogueRange
known (double value)
{
  return (LbCatalogueRange){ value, value, value };
}

gboolean
lb_own_catalogue_add_lure (const char *name, const LbLure *lure, char **id, GError **error)
{
  LbSetup trial = lb_setup_default ();
  g_autofree char *line = clean_name (name, error);
  g_autoptr (LbCatalogue) own = NULL;
  LbCatalogueLure *part;

  trial.rig.leaders[0].lure = *lure;
  if (!line || !lb_setup_validate (&trial, error) || !(own = load_own (error)))
    return FALSE;
  part = part_named (own, own->lures, sizeof *part, g_steal_pointer (&line));
  part->lure = *lure;
  part->drag_area = known (lure->drag_area);
  part->down_force_ratio = known (lure->down_force_ratio);
  part->buoyancy = known (lure->buoyancy);
  part->mass = known (lure->mass);
  return finish (own, part->id, id, error);
}

static gboolean
fail_unknown (const char *id, GError **error)
{
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY,
               _ ("%s is no longer in your catalogue."), id);
  return FALSE;
}

/* The name's place in the part of that id, or NULL. */
static char **
name_of (const LbCatalogue *own, const char *id)
{
  LbCatalogueWeight *weight = (void *) lb_catalogue_find_weight (own, id);
  LbCatalogueLine *line = (void *) lb_catalogue_find_line (own, id);
  LbCatalogueLure *lure = (void *) lb_catalogue_find_lure (own, id);

  return weight ? &weight->name : line ? &line->name : lure ? &lure->name : NULL;
}

gboolean
lb_own_catalogue_rename (const char *id, const char *name, GError **error)
{
  char *line = clean_name (name, error);
  g_autoptr (LbCatalogue) own = line ? load_own (error) : NULL;
  char **place = own ? name_of (own, id) : NULL;

  if (!place)
    {
      g_free (line);
      return own ? fail_unknown (id, error) : FALSE;
    }
  g_free (*place);
  *place = line;
  return save_own (own, error);
}

gboolean
lb_own_catalogue_remove (const char *id, GError **error)
{
  g_autoptr (LbCatalogue) own = load_own (error);

  if (!own)
    return FALSE;
  if (!g_ptr_array_remove (own->weights, (gpointer) lb_catalogue_find_weight (own, id))
      && !g_ptr_array_remove (own->lines, (gpointer) lb_catalogue_find_line (own, id))
      && !g_ptr_array_remove (own->lures, (gpointer) lb_catalogue_find_lure (own, id)))
    return fail_unknown (id, error);
  return save_own (own, error);
}
