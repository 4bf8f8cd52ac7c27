package org.scrubline.platform;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A table as the data-table component prints it.
 *
 * @param rows as many cells each as there are columns; the first names the row
 */
public record TableView(List<Column> columns, List<List<Cell>> rows) {

    /** A column; {@code numeric} sets its figures in line. */
    public record Column(String label, boolean numeric) {}

    /** A cell; {@code href} is a path of this server or null. */
    public record Cell(String text, @Nullable String href) {

        public static Cell of(String text) {
            return new Cell(text, null);
        }

        public static Cell of(int number) {
            return of(Integer.toString(number));
        }
    }

    public TableView {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }
}
