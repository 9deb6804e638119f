.import --csv visits.csv visits
.mode list
.headers on
select dog, count(*) as grooms, cast(avg(minutes_min) as integer) as minutes from visits group by dog;
