package coldround.backup.edge;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;

/** How a cell is written into a backup and read from it, the same for both databases. */
enum CellType {
  TRUTH {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeBoolean(row.getBoolean(column));
    }

    @Override
    Object read(JsonNode cell) {
      return cell.isBoolean() ? cell.booleanValue() : null;
    }
  },
  WHOLE {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeNumber(row.getLong(column));
    }

    @Override
    Object read(JsonNode cell) {
      return cell.isIntegralNumber() && cell.canConvertToLong() ? cell.longValue() : null;
    }
  },
  REAL {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      // text, as JSON has no infinity
      to.writeString(Double.toString(row.getDouble(column)));
    }

    @Override
    Object read(JsonNode cell) {
      return Double.valueOf(cell.textValue());
    }
  },
  DAY {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeString(row.getObject(column, LocalDate.class).toString());
    }

    @Override
    Object read(JsonNode cell) {
      return LocalDate.parse(cell.textValue());
    }
  },
  TIME {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeString(row.getObject(column, LocalDateTime.class).toString());
    }

    @Override
    Object read(JsonNode cell) {
      return LocalDateTime.parse(cell.textValue());
    }
  },
  MOMENT {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeString(row.getObject(column, OffsetDateTime.class).toString());
    }

    @Override
    Object read(JsonNode cell) {
      return OffsetDateTime.parse(cell.textValue());
    }
  },
  BYTES {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeBinary(row.getBytes(column));
    }

    @Override
    Object read(JsonNode cell) throws IOException {
      return cell.binaryValue();
    }
  },
  TEXT {
    @Override
    void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException {
      to.writeString(row.getString(column));
    }

    @Override
    Object read(JsonNode cell) {
      return cell.textValue();
    }
  };

  abstract void write(ResultSet row, int column, JsonGenerator to) throws SQLException, IOException;

  /**
   * @return null, or a fault, where the cell is none of this type
   */
  abstract Object read(JsonNode cell) throws IOException;

  /**
   * @param sql one of {@link Types}
   * @param name as the database calls it: one of the two gives moments as times
   */
  static CellType of(int sql, String name) {
    return switch (sql) {
      case Types.BOOLEAN, Types.BIT -> TRUTH;
      case Types.SMALLINT, Types.INTEGER, Types.BIGINT -> WHOLE;
      case Types.REAL, Types.FLOAT, Types.DOUBLE -> REAL;
      case Types.DATE -> DAY;
      case Types.TIMESTAMP_WITH_TIMEZONE -> MOMENT;
      case Types.TIMESTAMP -> name.equalsIgnoreCase("timestamptz") ? MOMENT : TIME;
      case Types.BINARY, Types.VARBINARY, Types.LONGVARBINARY -> BYTES;
      case Types.CHAR, Types.VARCHAR, Types.LONGVARCHAR -> TEXT;
      default -> throw new IllegalArgumentException("columns of type " + name + " are not known");
    };
  }
}
