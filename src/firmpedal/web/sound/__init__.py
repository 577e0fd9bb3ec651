"""What the page "Is it sound?" is made of: findings that can be accepted, measurements that can be typed."""
