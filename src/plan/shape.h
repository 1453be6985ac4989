/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

#include "core/limits.h"

G_BEGIN_DECLS

/* Structs of the plan as JSON objects, described by tables, so that what is read and what is
 * written cannot differ. The tables of the plan file are in plan/format.c. */

typedef enum
{
  BS_MEMBER_NUMBER, /* double; NAN is left out */
  BS_MEMBER_COUNT,  /* int; one below its range is left out */
  BS_MEMBER_AMOUNT, /* gint64 */
  BS_MEMBER_FLAG,   /* gboolean */
  BS_MEMBER_TEXT,   /* GRefString *; NULL is left out */
  BS_MEMBER_CHOICE, /* an enum that counts from 0 (-1 is left out), or a gboolean */
  BS_MEMBER_OBJECT, /* another struct, inside this one */
  BS_MEMBER_PARTS,  /* GPtrArray * of reference-counted structs; left out when empty */
  BS_MEMBER_VALUES, /* GArray * of structs; left out when empty */
} BsMemberKind;

typedef struct _BsShape BsShape;

typedef struct
{
  const char *key;
  gsize offset;               /* in the struct */
  const BsLimit *limit;       /* of a number, count or amount */
  const char *const *choices; /* of a choice, NULL-terminated */
  const BsShape *shape;       /* of an object, or of what a list holds */
  guint max_length;           /* of a list */
  BsMemberKind kind;
  gboolean is_required; /* else a missing key leaves what the struct held before */
} BsMember;

struct _BsShape
{
  const BsMember *members; /* in the order in which they are written; the last has no key */
  gssize unknown;          /* offset of a GRefString *; -1: the struct around keeps them */
  gsize size;              /* of a struct of a GArray, */
  gconstpointer blank;     /* and what it holds before it is read; NULL: zeros */
  gpointer (*new_part) (const char *id); /* of a GPtrArray */
};

/* Where an object stands in the file, for errors. The outermost has no parent; a list's element has
 * no key. */
typedef struct _BsPath
{
  const struct _BsPath *parent;
  const char *key;
  guint index;
} BsPath;

/* "laminations[3].height_mm"; the caller's. */
char *bs_path_to_string (const BsPath *self);

/* Fills the struct at `target` from an object. Members that were understood are taken out of it;
 * those that are left are kept as the struct's unknown keys. FALSE (BS_DOCUMENT_ERROR_VALUE) at the
 * first member that is missing, of the wrong kind or out of range; the struct is then half filled.
 */
gboolean bs_shape_read (const BsShape *self, JsonObject *object, gpointer target,
                        const BsPath *path, GError **error);

/* The opposite: a new object. */
JsonObject *bs_shape_write (const BsShape *self, gconstpointer source);

/* Whether two structs are written alike. */
gboolean bs_shape_equal (const BsShape *self, gconstpointer a, gconstpointer b);

G_END_DECLS
