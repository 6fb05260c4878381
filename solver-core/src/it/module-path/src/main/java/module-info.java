module hut {
  requires org.spanwire;
}
