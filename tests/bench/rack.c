/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/application.h"
#include "app/boards-import.h"
#include "app/window-private.h"
#include "core/text.h"
#include "meter.h"

#include <gtk/gtk.h>
#include <string.h>

/* What the program does for one frame while someone types into the rack of 500 boards, at 1600 x
 * 1000: 24 lengths down their column, 6 rows from the label to the length, three pages down.
 * xdotool presses the keys. */

#define N_BOARDS 500
#define N_ROWS 10000

static BsPlan *
new_plan (void)
{
  BsPlan *plan = bs_plan_new ();
  BsWood *wood = bs_wood_new ("oak");

  bs_text_set (&wood->name, "Oak");
  g_ptr_array_add (plan->woods, wood);
  for (int i = 0; i < N_BOARDS; i++)
    {
      g_autofree char *id = g_strdup_printf ("board-%d", i + 1);
      BsBoard *board = bs_board_new (id);
      bs_text_set (&board->label, id + strlen ("board-"));
      bs_text_set (&board->wood, "oak");
      board->length = 2400.0 + i % 7 * 100.0;
      board->width = 140.0 + i % 11 * 10.0;
      board->thickness = 50.8;
      board->bow = i % 5;
      board->cup = i % 3;
      board->twist = i % 4;
      g_ptr_array_add (plan->boards, board);
    }
  return plan;
}

static void
add (GPtrArray *words, const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, " ", -1);

  for (char **part = parts; *part != NULL; part++)
    g_ptr_array_add (words, g_strdup (*part));
}

static void
came (GtkWidget *widget, guint first)
{
}

/* A table of 10,000 boards, every tenth of which is broken: the good ones are kept by Enter. */
static gboolean
read_table (gpointer application)
{
  GtkWindow *window = gtk_application_get_active_window (application);
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) text = g_string_new ("label,wood,thickness,width,length,moisture,price\n");

  for (int i = 0; i < N_ROWS; i++)
    g_string_append_printf (text, "%d,oak,50,%s,%d,8.%d,42.50\n", i + 1,
                            i % 10 == 3 ? "wide" : "190", 2000 + i % 400, i % 10);
  add (words, "xdotool sleep 1.5 key Return sleep 1.5");
  g_ptr_array_add (words, NULL);
  meter_run (application, "frame while a table of 10,000 boards is read", words, NULL);
  bs_boards_import_text (GTK_WIDGET (window), bs_window_get_session (BS_WINDOW (window)), text->str,
                         N_BOARDS, BS_BOARD_LABEL, came);
  return G_SOURCE_REMOVE;
}

static gboolean
type (gpointer application)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  add (words, "xdotool sleep 0.1");
  for (int i = 0; i < 24; i++)
    add (words, "key --delay 40 2 4 4 0 Return sleep 0.04");
  add (words, "key --delay 40 Home");
  for (int i = 0; i < 6; i++)
    add (words, "key --delay 40 a 1 Tab o a k Tab 5 0 Tab 1 5 0 Tab 2 4 0 0 Return sleep 0.04");
  for (int i = 0; i < 3; i++)
    add (words, "key Page_Down sleep 0.2");
  g_ptr_array_add (words, NULL);
  meter_run (application, "frame while typing, 500 boards, 1600 x 1000", words, read_table);
  return G_SOURCE_REMOVE;
}

/* Another board is chosen, by its length. */
static gboolean
choose (gpointer application)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  add (words, "xdotool mousemove 810 140 click 1 sleep 0.5");
  g_ptr_array_add (words, NULL);
  meter_run (application, "frame while a board is chosen", words, type);
  return G_SOURCE_REMOVE;
}

/* The table, and beneath it the first board with its faces and forms. */
static gboolean
go_there (gpointer application)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  add (words, "sleep 0.6");
  g_ptr_array_add (words, NULL);
  meter_run (application, "frame while the place is made", words, choose);
  bs_window_go_to (BS_WINDOW (gtk_application_get_active_window (application)), "boards");
  return G_SOURCE_REMOVE;
}

static void
activate_cb (GtkApplication *application)
{
  BsWindow *window = bs_window_new (application);
  g_autoptr (BsPlan) plan = new_plan ();

  bs_session_open (bs_window_get_session (window), plan);
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_fullscreen (GTK_WINDOW (window));
  gtk_window_present (GTK_WINDOW (window));
  g_timeout_add (1200, go_there, application);
}

int
main (void)
{
  g_autoptr (GtkApplication) application = GTK_APPLICATION (bs_application_new ()); /* its style */

  meter_init ();
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), 0, NULL);
}
