package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Polarity;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.Reference;
import org.boothlamp.technique.TransferState;

/**
 * The words of one column and what they stand for. SQLite turns each word into its place in the
 * list, because a number costs a fraction of what a string costs on its way out of the database.
 */
final class StoredWords<T> {

  static final StoredWords<Quantity> QUANTITIES =
      new StoredWords<>("quantity", List.of(Quantity.values()), Quantity::key);
  static final StoredWords<Side> SIDES =
      new StoredWords<>("side", List.of(Side.values()), Side::word);
  static final StoredWords<Polarity> POLARITIES =
      new StoredWords<>("polarity", List.of(Polarity.values()), Polarity::word);
  static final StoredWords<Quantity> STEADY_QUANTITIES =
      new StoredWords<>("steady_quantity", List.of(Quantity.values()), Quantity::key);
  static final StoredWords<TransferState> TRANSFERS =
      new StoredWords<>("transfer", List.of(TransferState.values()), TransferState::word);
  static final StoredWords<Cause> CAUSES =
      new StoredWords<>("cause", List.of(Cause.values()), Cause::word);
  static final StoredWords<Doubt> DOUBTS =
      new StoredWords<>("doubt", List.of(Doubt.values()), Doubt::word);
  static final StoredWords<Reference> REFERENCES =
      new StoredWords<>("reference", List.of(Reference.values()), Reference::word);

  private final String column;
  private final List<T> values;
  private final String[] words;

  private StoredWords(String column, List<T> values, Function<T, String> wordOf) {
    this.column = column;
    this.values = values;
    words = values.stream().map(wordOf).toArray(String[]::new);
  }

  /** The SQL expression for the place of the column's word. */
  String place() {
    StringBuilder sql = new StringBuilder("CASE ").append(column);
    for (int i = 0; i < words.length; i++) {
      sql.append(" WHEN '").append(words[i]).append("' THEN ").append(i);
    }
    return sql.append(" ELSE -1 END").toString();
  }

  /** The value at the place that is next in the row. */
  T of(Columns row) throws SQLException {
    int place = (int) row.whole();
    if (place < 0) {
      throw new IllegalStateException(
          "column " + column + " must hold one of " + Arrays.toString(words) + " in every row");
    }
    return values.get(place);
  }
}
