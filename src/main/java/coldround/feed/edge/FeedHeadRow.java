package coldround.feed.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "feed_head")
class FeedHeadRow {
  static final int ONLY = 1;

  @Id Integer id;
  long position;
  long oldest;
}
